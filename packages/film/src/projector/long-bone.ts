/** The shape of an unbroken long bone along z, and fragments of it wherever they have gone. All mm. */
import { type Section, type Tube, type TubeShape, tube } from './tube.ts';
import type { Frame3 } from './vector.ts';

/** A bone from z = -proximalMm (its proximal end) to z = distalMm; the fracture lies about z = 0. */
export interface LongBone {
  readonly proximalMm: number;
  readonly distalMm: number;
  /** Half axes at z = 0, seen in the film and along the beam (before `turn`). */
  readonly a: number;
  readonly b: number;
  readonly turn: number;
  /** Change of size for each mm. */
  readonly taper: number;
  /** Canal to outer, and how much it waves (share) with what length. */
  readonly canalShare: number;
  readonly wave: number;
  readonly waveMm: number;
  /** Canal off the middle, as shares of a and b. */
  readonly offA: number;
  readonly offB: number;
  /** Bow at the middle, mm, in both directions. */
  readonly bowX: number;
  readonly bowY: number;
  readonly attenuation: number;
  /** How much wider the ends are than the shaft. */
  readonly flareProximal: number;
  readonly flareDistal: number;
  /** Seed of the spongy ends' pattern. */
  readonly grain: number;
}

/** Distance from the nearer end over the shaft's width. */
const fromEnd = (bone: LongBone, z: number): number => Math.min(z + bone.proximalMm, bone.distalMm - z) / (2 * bone.a);

/** True where the ends flare or hold spongy bone. */
export const isFlare = (bone: LongBone, z: number): boolean => fromEnd(bone, z) < SPONGY_WIDTHS;

const SPONGY_WIDTHS = 1.4;
const CAP_WIDTHS = 0.35;

function growth(bone: LongBone, z: number): number {
  const p = Math.max(0, z + bone.proximalMm) / (2 * bone.a);
  const d = Math.max(0, bone.distalMm - z) / (2 * bone.a);
  return (
    1 +
    bone.taper * z +
    bone.flareProximal * Math.exp(-((p / 0.95) ** 1.5)) +
    bone.flareDistal * Math.exp(-((d / 0.8) ** 1.5))
  );
}

function cap(bone: LongBone, z: number): number {
  const t = fromEnd(bone, z) / CAP_WIDTHS;
  return t >= 1 ? 1 : Math.sqrt(Math.max(0.02, 1 - (1 - Math.max(0, t)) ** 2));
}

function bow(bone: LongBone, z: number): [number, number] {
  const u = (2 * (z + bone.proximalMm)) / (bone.proximalMm + bone.distalMm) - 1;
  return [bone.bowX * (1 - u * u), bone.bowY * (1 - u * u)];
}

export function outerAt(bone: LongBone, z: number): Section {
  const g = growth(bone, z) * cap(bone, z);
  const [cx, cy] = bow(bone, z);
  return { cx, cy, a: bone.a * g, b: bone.b * g };
}

export function canalAt(bone: LongBone, z: number): Section {
  const o = outerAt(bone, z);
  const widen = Math.exp(-((fromEnd(bone, z) / 1.3) ** 2));
  const share = bone.canalShare + (0.88 - bone.canalShare) * widen;
  const waves = 1 + bone.wave * Math.sin((2 * Math.PI * z) / bone.waveMm + bone.grain);
  const end = fromEnd(bone, z) < CAP_WIDTHS / 2 ? 0.3 : 1;
  return {
    cx: o.cx + bone.offA * bone.a * (1 - widen),
    cy: o.cy + bone.offB * bone.b * (1 - widen),
    a: Math.min(0.93, share * waves) * o.a * end,
    b: Math.min(0.93, share * waves) * o.b * end,
  };
}

/** Spongy bone in the ends, in grains about a third of a millimetre across. */
function spongyAt(bone: LongBone, z: number, x: number): number {
  const d = fromEnd(bone, z) / SPONGY_WIDTHS;
  if (d >= 1) return 0;
  const grain = 0.09 * (2 * bone.a);
  const dense = 0.55 * (1 - d) ** 1.2;
  return dense * (0.55 + 0.9 * smoothNoise(x / grain, z / grain, bone.grain));
}

/** Smooth noise in [0, 1] of unit grain. */
function smoothNoise(x: number, y: number, seed: number): number {
  const i = Math.floor(x);
  const j = Math.floor(y);
  const u = x - i;
  const v = y - j;
  const s = (t: number) => t * t * (3 - 2 * t);
  const h = (p: number, q: number) => {
    let n = (Math.imul(p, 374761393) ^ Math.imul(q, 668265263) ^ Math.imul(Math.floor(seed * 1000), 1274126177)) >>> 0;
    n = Math.imul(n ^ (n >>> 13), 1274126177) >>> 0;
    return ((n ^ (n >>> 16)) >>> 0) / 4294967296;
  };
  const a = h(i, j) + (h(i + 1, j) - h(i, j)) * s(u);
  const b = h(i, j + 1) + (h(i + 1, j + 1) - h(i, j + 1)) * s(u);
  return a + (b - a) * s(v);
}

/** A fragment of the bone in its own frame: the proximal one lies at z < 0, the distal one at z > 0. */
export function fragment(
  bone: LongBone,
  frame: Frame3,
  part: 'proximal' | 'distal',
  face: Omit<NonNullable<TubeShape['face']>, 'side'>,
): Tube {
  const overlapMm = 3 * bone.a;
  return tube({
    frame,
    turn: bone.turn,
    fromZ: part === 'proximal' ? -bone.proximalMm : -overlapMm,
    toZ: part === 'proximal' ? overlapMm : bone.distalMm,
    outer: (z) => outerAt(bone, z),
    canal: (z) => canalAt(bone, z),
    attenuation: bone.attenuation,
    spongy: (z, x) => spongyAt(bone, z, x),
    face: { ...face, side: part === 'proximal' ? 1 : -1 },
  });
}

/** A plain shaft beside it (fibula, ulna) or a limb's soft tissue: sizes and centre between two z. */
export function shaft(
  frame: Frame3,
  span: readonly [number, number],
  section: (z: number) => Section,
  attenuation: number,
  canalShare = 0,
  isSmooth = false,
): Tube {
  return tube({
    frame,
    turn: 0,
    fromZ: span[0],
    toZ: span[1],
    outer: section,
    ...(canalShare > 0
      ? {
          canal: (z: number) => {
            const s = section(z);
            return { ...s, a: canalShare * s.a, b: canalShare * s.b };
          },
        }
      : {}),
    attenuation,
    isSmooth,
  });
}
