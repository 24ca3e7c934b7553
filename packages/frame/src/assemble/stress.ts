/** Peak stress at the outer surface of a member's end, from its end forces. */
import type { SectionProperties } from './section.ts';

/**
 * Von Mises stress in MPa at the outer surface of the worse end; null where the outline is unknown.
 * `ends` holds N Vy Vz T My Mz of one end and then of the other, from `offset` on.
 * Direct stress |N|/A plus the largest bending stress on the outline; torsion |T| c / J with c half the diameter of a
 * circle, 2 a^2 b / (a^2 + b^2) of an oval with half axes a > b (thin similar ovals: shear is largest at the flat side).
 */
export function peakStressMPa(section: SectionProperties, ends: ArrayLike<number>, offset = 0): number | null {
  if (!section.outline) return null;
  const { halfYMm, halfZMm } = section.outline;
  const a = Math.max(halfYMm, halfZMm);
  const b = Math.min(halfYMm, halfZMm);
  const c = (2 * a * a * b) / (a * a + b * b);
  let worst = 0;
  for (let end = offset; end < offset + 12; end += 6) {
    const [n, t, my, mz] = [ends[end] ?? 0, ends[end + 3] ?? 0, ends[end + 4] ?? 0, ends[end + 5] ?? 0];
    const bending = Math.hypot((my * halfZMm) / section.iyMm4, (mz * halfYMm) / section.izMm4);
    const direct = Math.abs(n) / section.areaMm2 + bending;
    const shear = (t * c) / section.jMm4;
    worst = Math.max(worst, Math.sqrt(direct * direct + 3 * shear * shear));
  }
  return worst;
}
