/**
 * One-way contacts and sleeves: their openings as rows over the interface's unknowns, and the energy they store.
 * Contact: k/2 times the overlap squared. Sleeve: k/2 times (distance off the middle less clearance) squared, beyond it.
 * Both are convex and once differentiable in the motions.
 */
import type { FrameInputs } from '../model/compiled-frame.ts';

/** A sleeve has two rows, along two directions square to its axis. */
export const SLEEVE_ROWS = 2;

/** Forces and tangents of contacts and sleeves; row c is contact c, rows C + 2 s and C + 2 s + 1 are sleeve s. */
export interface GapLaws {
  readonly contacts: number;
  readonly sleeves: number;
  readonly rows: number;
  /** Writes the energy's gradient over the rows at the row amounts `d`. */
  force(d: Float64Array, force: Float64Array): void;
  /** Writes for each contact and sleeve whether it bears; returns whether any changed. */
  bears(d: Float64Array, flags: Uint8Array): boolean;
  /** Whether the energy is quadratic as long as `flags` stay: no sleeve with clearance bears. */
  isLinear(flags: Uint8Array): boolean;
  /** Calls `add` with stiffness and weights of two rows (a contact has one: its second weight is 0). */
  tangent(d: Float64Array, add: (k: number, row: number, weight: number, weight2: number) => void): void;
}

/** The laws with the figures that `inputs` holds at the time of each call. */
export function gapLaws(inputs: FrameInputs): GapLaws {
  const { contactGapMm, contactK, sleeveClearanceMm, sleeveK } = inputs;
  const contacts = contactK.length;
  const sleeves = sleeveK.length;
  return {
    contacts,
    sleeves,
    rows: contacts + SLEEVE_ROWS * sleeves,
    force(d, force) {
      for (let c = 0; c < contacts; c++) {
        const opening = contactGapMm[c]! + d[c]!;
        force[c] = opening < 0 ? contactK[c]! * opening : 0;
      }
      for (let s = 0; s < sleeves; s++) {
        const row = contacts + SLEEVE_ROWS * s;
        const off = distance(d, row);
        const over = off - sleeveClearanceMm[s]!;
        const share = over > 0 ? (sleeveK[s]! * over) / off : 0;
        force[row] = share * d[row]!;
        force[row + 1] = share * d[row + 1]!;
      }
    },
    bears(d, flags) {
      let changed = false;
      for (let c = 0; c < contacts + sleeves; c++) {
        const bearing = c < contacts ? contactGapMm[c]! + d[c]! < 0 : sleeveBears(d, c - contacts);
        changed ||= flags[c] !== Number(bearing);
        flags[c] = Number(bearing);
      }
      return changed;
    },
    isLinear(flags) {
      for (let s = 0; s < sleeves; s++) if (flags[contacts + s] === 1 && sleeveClearanceMm[s]! > 0) return false;
      return true;
    },
    tangent(d, add) {
      for (let c = 0; c < contacts; c++) if (contactGapMm[c]! + d[c]! < 0) add(contactK[c]!, c, 1, 0);
      for (let s = 0; s < sleeves; s++) {
        if (!sleeveBears(d, s)) continue;
        const row = contacts + SLEEVE_ROWS * s;
        const off = distance(d, row);
        const [a, b] = off > 0 ? [d[row]! / off, d[row + 1]! / off] : [1, 0];
        add(sleeveK[s]!, row, a, b);
        const across = off > 0 ? 1 - sleeveClearanceMm[s]! / off : 1;
        add(sleeveK[s]! * across, row, -b, a);
      }
    },
  };

  /** Without clearance a sleeve bears from the start, and is a plain spring. */
  function sleeveBears(d: Float64Array, s: number): boolean {
    return sleeveClearanceMm[s] === 0 || distance(d, contacts + SLEEVE_ROWS * s) > sleeveClearanceMm[s]!;
  }
}

const distance = (d: Float64Array, row: number): number => Math.sqrt(d[row]! * d[row]! + d[row + 1]! * d[row + 1]!);
