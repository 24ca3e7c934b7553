/** The interface as each set of supports leaves it: the condensed stiffness and gap rows of its free unknowns. */
import { ROW } from '../assemble/deformations.ts';
import type { HeldInterface } from './contact-state.ts';
import type { Memory } from './memory.ts';
import type { Program } from './program.ts';

/** Room for one support set that holds `heldSlots` (6 a body) besides what all sets hold. */
export function holdInterface(program: Program, heldSlots: Int32Array, gapRows: number): HeldInterface {
  const held = new Set(Array.from(heldSlots, (slot) => program.unknownOf[slot]!));
  const kept: number[] = [];
  for (let unknown = program.interior; unknown < program.unknowns; unknown++) {
    if (!held.has(unknown)) kept.push(unknown - program.interior);
  }
  const n = kept.length;
  return {
    kept: Int32Array.from(kept),
    block: new Float64Array(n * n),
    diagonal: new Float64Array(n),
    gapRows: new Float64Array(gapRows * n),
    open: { n, values: new Float64Array(n * n), inverse: new Float64Array(n) },
    openMotion: null,
    isFactored: false,
  };
}

/** Takes over the interface block that the elimination left. */
export function refreshBlock(held: HeldInterface, program: Program, { values, diagonal }: Memory): void {
  const n = held.kept.length;
  const width = program.unknowns - program.interior;
  for (let i = 0; i < n; i++) {
    const row = program.interfaceAt + held.kept[i]! * width;
    for (let j = i; j < n; j++) held.block[i * n + j] = values[row + held.kept[j]!]!;
    held.diagonal[i] = diagonal[program.interior + held.kept[i]!]!;
  }
  held.isFactored = false;
}

/** Spreads the gap rows (12 motions each, with their unknowns) over the set's free unknowns. */
export function refreshGaps(held: HeldInterface, program: Program, rows: Float64Array, unknowns: Int32Array): void {
  const n = held.kept.length;
  held.gapRows.fill(0);
  for (let i = 0; i < n; i++) {
    const unknown = program.interior + held.kept[i]!;
    for (let k = 0; k < unknowns.length; k++) {
      if (unknowns[k] === unknown) held.gapRows[Math.floor(k / ROW) * n + i]! += rows[k]!;
    }
  }
}
