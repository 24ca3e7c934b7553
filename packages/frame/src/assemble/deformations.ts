/**
 * A frame as springs on deformations: every element is up to six springs, each on one deformation
 * d = row . (motions of its two bodies), so stiffness is the sum of k row rowT and energy the sum of k d^2 / 2. A member's
 * six: stretch, twist, and for each bending plane the difference of its ends' turns and their sum less the chord's
 * turn (which carries the shear). Derivation: docs/theory/frame.md.
 */

/** Deformations of an element, and numbers a row takes: six motions of each end's body. */
export const MODES = 6;
export const ROW = 12;
export const ELEMENT_ROWS = MODES * ROW;

/**
 * Writes the six rows of a member at `rows[at...]` from its axes and length; levers are the ends' places from the
 * roots of their bodies.
 */
export function writeMemberRows(
  rows: Float64Array,
  at: number,
  axes: Float64Array,
  axesAt: number,
  lengthMm: number,
  leverFrom: Float64Array,
  leverTo: Float64Array,
): void {
  const x0 = axes[axesAt]!;
  const x1 = axes[axesAt + 1]!;
  const x2 = axes[axesAt + 2]!;
  const y0 = axes[axesAt + 3]!;
  const y1 = axes[axesAt + 4]!;
  const y2 = axes[axesAt + 5]!;
  const z0 = axes[axesAt + 6]!;
  const z1 = axes[axesAt + 7]!;
  const z2 = axes[axesAt + 8]!;
  const turn = 2 / lengthMm;
  writeForce(rows, at, -x0, -x1, -x2, leverFrom);
  writeForce(rows, at + 6, x0, x1, x2, leverTo);
  writeTurn(rows, at + ROW, -x0, -x1, -x2);
  writeTurn(rows, at + ROW + 6, x0, x1, x2);
  writeTurn(rows, at + 2 * ROW, -z0, -z1, -z2);
  writeTurn(rows, at + 2 * ROW + 6, z0, z1, z2);
  writeForce(rows, at + 3 * ROW, turn * y0, turn * y1, turn * y2, leverFrom);
  writeForce(rows, at + 3 * ROW + 6, -turn * y0, -turn * y1, -turn * y2, leverTo);
  addTurns(rows, at + 3 * ROW, z0, z1, z2);
  writeTurn(rows, at + 4 * ROW, -y0, -y1, -y2);
  writeTurn(rows, at + 4 * ROW + 6, y0, y1, y2);
  writeForce(rows, at + 5 * ROW, -turn * z0, -turn * z1, -turn * z2, leverFrom);
  writeForce(rows, at + 5 * ROW + 6, turn * z0, turn * z1, turn * z2, leverTo);
  addTurns(rows, at + 5 * ROW, y0, y1, y2);
}

/** Writes the six rows of a spring: the difference of its nodes' motions in global axes (`to` less `from`). */
export function writeSpringRows(rows: Float64Array, at: number, leverFrom: Float64Array, leverTo: Float64Array): void {
  rows.fill(0, at, at + ELEMENT_ROWS);
  for (let k = 0; k < 3; k++) {
    writeGapRow(rows, at + k * ROW, k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0, leverFrom, leverTo);
    rows[at + (3 + k) * ROW + 3 + k] = -1;
    rows[at + (3 + k) * ROW + 9 + k] = 1;
  }
}

/** Writes one row: how far `to` moves from `from` along a direction. */
export function writeGapRow(
  rows: Float64Array,
  at: number,
  x: number,
  y: number,
  z: number,
  leverFrom: Float64Array,
  leverTo: Float64Array,
): void {
  writeForce(rows, at, -x, -y, -z, leverFrom);
  writeForce(rows, at + 6, x, y, z, leverTo);
}

/** Where both ends are on one body, the second half is the same six motions: adds it to the first and clears it. */
export function foldRows(rows: Float64Array, at: number, count: number): void {
  for (let row = at; row < at + count * ROW; row += ROW) {
    for (let k = row; k < row + 6; k++) {
      rows[k]! += rows[k + 6]!;
      rows[k + 6] = 0;
    }
  }
}

/** Rewrites one half of each row for a body whose unknowns are amounts of free motions (`basis`, 6 x 6). */
export function projectRows(rows: Float64Array, at: number, count: number, basis: Float64Array): void {
  const half = new Float64Array(6);
  for (let row = at; row < at + count * ROW; row += ROW) {
    for (let c = 0; c < 6; c++) {
      let sum = 0;
      for (let k = 0; k < 6; k++) sum += rows[row + k]! * basis[k * 6 + c]!;
      half[c] = sum;
    }
    rows.set(half, row);
  }
}

/** A force at the end of a lever, as a force and a moment at the root: m = r x f. */
function writeForce(rows: Float64Array, at: number, x: number, y: number, z: number, lever: Float64Array): void {
  const r0 = lever[0]!;
  const r1 = lever[1]!;
  const r2 = lever[2]!;
  rows[at] = x;
  rows[at + 1] = y;
  rows[at + 2] = z;
  rows[at + 3] = r1 * z - r2 * y;
  rows[at + 4] = r2 * x - r0 * z;
  rows[at + 5] = r0 * y - r1 * x;
}

function writeTurn(rows: Float64Array, at: number, x: number, y: number, z: number): void {
  rows[at] = 0;
  rows[at + 1] = 0;
  rows[at + 2] = 0;
  rows[at + 3] = x;
  rows[at + 4] = y;
  rows[at + 5] = z;
}

/** Adds the same turn at both ends. */
function addTurns(rows: Float64Array, at: number, x: number, y: number, z: number): void {
  for (let half = at + 3; half < at + ROW; half += 6) {
    rows[half]! += x;
    rows[half + 1]! += y;
    rows[half + 2]! += z;
  }
}
