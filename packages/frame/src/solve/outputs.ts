/** From an engine's motions and deformations to displacements, member end forces, contacts and sleeves. */
import { MODES } from '../assemble/deformations.ts';
import { writeMotions } from '../assemble/motions.ts';
import type { FrameInputs, FrameOutputs } from '../model/compiled-frame.ts';
import type { Engine } from './engine.ts';
import { SLEEVE_ROWS } from './gaps.ts';

/** Arrays for the results of every load case, and what fills them after a solve. */
export function outputWriter(engine: Engine, inputs: FrameInputs): { outputs: FrameOutputs; write: () => void } {
  const { topology } = engine;
  const cases = topology.loads.length;
  const { columns } = engine.kernel;
  const nodes = topology.nodes.length;
  const members = topology.members.names.length;
  const contacts = topology.contacts.names.length;
  const sleeves = topology.sleeves.names.length;
  const outputs: FrameOutputs = {
    displacements: new Float64Array(cases * nodes * 6),
    memberEnds: new Float64Array(cases * members * 12),
    contactOpeningMm: new Float64Array(cases * contacts),
    contactForceN: new Float64Array(cases * contacts),
    sleeveOffsetMm: new Float64Array(cases * sleeves),
    sleeveForceN: new Float64Array(cases * sleeves),
  };

  function write(): void {
    const { x, amounts, stiffness } = engine.kernel.memory();
    writeMotions(outputs.displacements, engine.unknowns, inputs.nodesMm, x, columns, cases);
    for (let member = 0; member < members; member++) {
      const element = engine.elements.ofMember[member]!;
      if (element < 0) continue;
      const turn = 2 / engine.writer.lengthsMm[member]!;
      writeEnds(outputs.memberEnds, member * 12, members * 12, cases, stiffness, amounts, element, columns, turn);
    }
    for (let load = 0; load < cases; load++) writeGaps(load);
  }

  function writeGaps(load: number): void {
    const amounts = engine.gapAmounts;
    const first = load * (contacts + SLEEVE_ROWS * sleeves);
    for (let c = 0; c < contacts; c++) {
      const opening = inputs.contactGapMm[c]! + amounts[first + c]!;
      outputs.contactOpeningMm[load * contacts + c] = opening;
      outputs.contactForceN[load * contacts + c] = opening < 0 ? -inputs.contactK[c]! * opening : 0;
    }
    for (let s = 0; s < sleeves; s++) {
      const row = first + contacts + SLEEVE_ROWS * s;
      const offset = Math.sqrt(amounts[row]! ** 2 + amounts[row + 1]! ** 2);
      const over = Math.max(0, offset - inputs.sleeveClearanceMm[s]!);
      outputs.sleeveOffsetMm[load * sleeves + s] = offset;
      outputs.sleeveForceN[load * sleeves + s] = inputs.sleeveK[s]! * over;
    }
  }

  return { outputs, write };
}

/**
 * End forces on a member from its six deformations: stretch, twist, and for z and y difference and sum of the turns; for
 * every load case, `stride` apart in `out`.
 */
function writeEnds(
  out: Float64Array,
  first: number,
  stride: number,
  cases: number,
  stiffness: Float64Array,
  amounts: Float64Array,
  element: number,
  columns: number,
  turn: number,
): void {
  const mode = element * MODES;
  const stretch = stiffness[mode]!;
  const torsion = stiffness[mode + 1]!;
  const differZ = stiffness[mode + 2]!;
  const addZ = stiffness[mode + 3]!;
  const differY = stiffness[mode + 4]!;
  const addY = stiffness[mode + 5]!;
  for (let load = 0; load < cases; load++) {
    const at = first + load * stride;
    const amount = mode * columns + load;
    const pull = stretch * amounts[amount]!;
    const twist = torsion * amounts[amount + columns]!;
    const differenceZ = differZ * amounts[amount + 2 * columns]!;
    const sumZ = addZ * amounts[amount + 3 * columns]!;
    const differenceY = differY * amounts[amount + 4 * columns]!;
    const sumY = addY * amounts[amount + 5 * columns]!;
    out[at] = -pull;
    out[at + 1] = turn * sumZ;
    out[at + 2] = -turn * sumY;
    out[at + 3] = -twist;
    out[at + 4] = sumY - differenceY;
    out[at + 5] = sumZ - differenceZ;
    out[at + 6] = pull;
    out[at + 7] = -turn * sumZ;
    out[at + 8] = turn * sumY;
    out[at + 9] = twist;
    out[at + 10] = sumY + differenceY;
    out[at + 11] = sumZ + differenceZ;
  }
}
