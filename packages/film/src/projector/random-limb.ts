/** What is drawn at random for a film: a bone, how the film takes it, and what else lies in the limb. */
import { value } from '@bonewright/evidence';
import { type LongBone, shaft } from './long-bone.ts';
import type { FilmKind } from './project.ts';
import type { Random } from './random.ts';
import { rod, type Solid } from './solids.ts';
import { type Frame3, frameAlong, toWorld } from './vector.ts';

export function randomBone(r: Random, widthMm: number): LongBone {
  const a = widthMm / 2;
  return {
    proximalMm: r.between(6, 8) * widthMm,
    distalMm: r.between(6, 8.5) * widthMm,
    a,
    b: a * r.between(0.75, 1.1),
    turn: r.between(-0.6, 0.6),
    taper: r.between(-0.006, 0.006) * (4 / widthMm),
    canalShare: r.between(0.45, 0.84),
    wave: r.between(0, 0.045),
    waveMm: widthMm * r.between(1, 2.4),
    offA: r.between(-0.08, 0.08),
    offB: r.between(-0.08, 0.08),
    bowX: r.between(-0.5, 0.5) * widthMm * 0.7,
    bowY: r.between(-0.5, 0.5) * widthMm * 0.7,
    attenuation: value('imaging.bone.attenuation') * r.between(0.7, 1.3),
    flareProximal: r.between(0.5, 1),
    flareDistal: r.between(0.3, 0.8),
    grain: r.between(0, 10),
  };
}

export function randomKind(r: Random, bone: LongBone): FilmKind {
  const log = r.chance(0.5);
  const height = 2 * bone.b * bone.attenuation;
  // noise of a pixel under the limb as a share of the bone's shadow
  const noise = r.between(0.02, 0.085);
  const sign = log ? (r.chance(0.8) ? -1 : 1) : r.chance(0.5) ? 1 : -1;
  return {
    blurPx: r.between(0.75, 1.6),
    tailShare: r.between(0.02, 0.09),
    hardening: r.between(0, 0.3),
    scatter: r.between(0.01, 0.06),
    quanta: Math.min(4e5, 2.2 / (noise * height) ** 2),
    noiseSpread: r.between(0, 0.12),
    bitsStored: r.chance(0.5) ? 14 : r.chance(0.5) ? 12 : 16,
    photometric: sign === 1 ? 'MONOCHROME1' : 'MONOCHROME2',
    relationship: log ? 'LOG' : 'LIN',
    sign,
  };
}

export function jag(r: Random, widthMm: number): (x: number) => number {
  const parts = Array.from({ length: 4 }, (_, k) => ({
    f: (k + 1) * r.between(1.5, 3),
    p: r.between(0, 6.3),
    h: (r.between(0, 0.06) * widthMm) / (k + 1),
  }));
  return (x) => parts.reduce((s, { f, p, h }) => s + h * Math.sin((f * x) / widthMm + p), 0);
}

export function secondBone(r: Random, bone: LongBone, frames: readonly [Frame3, Frame3]): Solid[] {
  if (r.chance(0.45)) return [];
  const a = bone.a * r.between(0.15, 0.55);
  const side = r.chance(0.5) ? 1 : -1;
  const depth = r.between(-1.2, 1.2) * bone.a;
  const canal = r.between(0.3, 0.6);
  const gapMm = r.between(0.5, 3) * bone.a;
  return frames.map((frame, k) => {
    const near = (bone.a + a) * r.between(0.85, 1.8);
    const far = near + r.between(-0.4, 0.4) * bone.a;
    const span: [number, number] =
      k === 0 ? [-bone.proximalMm * 0.9, -gapMm * r.uniform()] : [gapMm * r.uniform(), bone.distalMm * 0.9];
    return shaft(
      frame,
      span,
      (z) => ({ cx: side * (near + (far - near) * Math.abs(z / span[k === 0 ? 0 : 1]!)), cy: depth, a, b: a }),
      bone.attenuation,
      canal,
    );
  });
}

export function randomMetal(r: Random, bone: LongBone, frames: readonly [Frame3, Frame3]): Solid[] {
  const steel = value('imaging.steel.attenuation');
  if (!r.chance(0.25)) return [];
  const side = r.chance(0.5) ? 1 : -1;
  const diameter = r.between(0.16, 0.28) * 2 * bone.a;
  return frames.flatMap((frame, k) =>
    [r.between(1, 1.6), r.between(2.8, 3.8)].map((widths) => {
      const z = (k === 0 ? -1 : 1) * widths * 2 * bone.a;
      const lean = r.between(-0.15, 0.15);
      return rod(
        toWorld(frame, [-side * 1.5 * bone.a, r.between(-0.3, 0.3) * bone.a, z]),
        toWorld(frame, [side * 5 * bone.a, r.between(-0.3, 0.3) * bone.a, z + lean * 5 * bone.a]),
        diameter,
        steel,
      );
    }),
  );
}

export function softTissue(r: Random, bone: LongBone, frames: readonly [Frame3, Frame3]): Solid[] {
  const a = bone.a * r.between(2.4, 4);
  const b = a * r.between(0.6, 1);
  // a limb that holds its bone, its bow and its second bone, skin to spare
  const off = r.between(-1, 1) * Math.max(0, a - 2 * bone.a);
  const slope = r.between(-0.05, 0.03);
  const [p, d] = frames;
  const far = toWorld(d, [0, 0, bone.distalMm]);
  const frame = frameAlong(p.origin, p.z, p.x);
  const bendX = (far[0] - toWorld(p, [0, 0, bone.distalMm])[0]) / bone.distalMm;
  return [
    shaft(
      frame,
      [-bone.proximalMm * 1.3, bone.distalMm * 1.3],
      (z) => ({
        cx: off + bendX * ((z + Math.sqrt(z * z + (4 * bone.a) ** 2)) / 2),
        cy: 0,
        a: Math.max(0.4 * a, a + slope * z),
        b: Math.max(0.4 * b, b + slope * z),
      }),
      value('imaging.soft-tissue.attenuation'),
      0,
      true,
    ),
  ];
}
