/** One view of a demonstration limb: solids in space, what a surgeon would click, and the film that comes of it. */
import {
  ball,
  box,
  type Camera,
  type FilmKind,
  type Frame3,
  fragment,
  frameAlong,
  type GreyImage,
  outerAt,
  type Pixel,
  project,
  rod,
  type Solid,
  shadowOf,
  shaft,
  type TraceRequest,
  toWorld,
  type Vector,
} from '@bonewright/film';
import type { DemoLimb } from './bones.ts';
import { type Repair, repairSolids } from './repair-solids.ts';

export type View = 'craniocaudal' | 'mediolateral';

export interface LimbFilm {
  readonly image: GreyImage;
  readonly camera: Camera;
  readonly kind: FilmKind;
  readonly request: TraceRequest;
  readonly fractureLine: readonly [Pixel, Pixel];
  readonly boneEnds: readonly [Pixel, Pixel];
}

const COLS = 640;
const ROWS = 960;
const SOURCE_MM = 1000;
const BONE = 0.1;
const SOFT = 0.027;
const STEEL = 2.9;
const RADIANS = Math.PI / 180;
const SEEDS_A_DAY = 1000;

/** The limb as it came in, or with what was put into it since. */
export function limbFilm(limb: DemoLimb, view: View, side: 'L' | 'R', repair: Repair | null = null): LimbFilm {
  const camera: Camera = { cols: COLS, rows: ROWS, pitchMm: limb.pitchMm, sourceToDetectorMm: SOURCE_MM };
  const { bone } = limb;
  const shrink = (SOURCE_MM - limb.heightMm) / SOURCE_MM;
  const middle = ((bone.distalMm - bone.proximalMm) / 2) * 1;
  const origin: Vector = [(COLS / 2) * limb.pitchMm * 1, (ROWS / 2) * limb.pitchMm - middle * shrink, limb.heightMm];
  // craniocaudal: medial runs with the columns; mediolateral: cranial does
  const near: Vector = view === 'craniocaudal' ? [1, 0, 0] : [0, 0, 1];
  const whole = frameAlong(origin, view === 'craniocaudal' ? [0.03, 1, 0.02] : [-0.025, 1, -0.03], near);
  const [tx, ty] = limb.turnDeg.map((d) => Math.tan(d * RADIANS)) as [number, number];
  const far = toWorld(whole, [tx, ty, 1]);
  const direction: Vector = [far[0] - origin[0], far[1] - origin[1], far[2] - origin[2]];
  const distal = frameAlong(toWorld(whole, limb.shiftMm), direction, whole.x);
  const [slopeX, slopeY] = limb.obliquityDeg.map((d) => Math.tan(d * RADIANS)) as [number, number];
  const face = {
    at: 0,
    slopeX,
    slopeY,
    jag: (x: number) =>
      0.12 * bone.a * Math.sin(5.1 * (x / bone.a) + limb.seed) + 0.07 * bone.a * Math.sin(11 * (x / bone.a)),
  };
  const ballAt: Vector = [
    origin[0] + limb.ballAt[0] * (view === 'craniocaudal' ? 1 : -1),
    origin[1] + limb.ballAt[1],
    limb.heightMm,
  ];
  const solids: Solid[] = [
    fragment(bone, whole, 'proximal', face),
    fragment(bone, distal, 'distal', face),
    ...splint(limb, whole, distal),
    ...neighbours(limb, whole, distal),
    softTissue(limb, whole, distal),
    ball(ballAt, limb.ballMm / 2, STEEL),
    ...marker(side, limb),
    ...(repair ? repairSolids(repair, limb, whole) : []),
  ];
  const kind: FilmKind = {
    blurPx: 1.05,
    tailShare: 0.05,
    hardening: 0.15,
    scatter: 0.035,
    quanta: 9000,
    noiseSpread: 0.08,
    bitsStored: 14,
    photometric: 'MONOCHROME2',
    relationship: 'LOG',
    sign: -1,
  };
  const image = project({
    camera,
    solids,
    film: kind,
    open: [24, 22, COLS - 26, ROWS - 24],
    seed: limb.seed * 2 + (view === 'craniocaudal' ? 0 : 1) + SEEDS_A_DAY * (repair ? repair.day + 1 : 0),
  });
  return { image, camera, kind, ...clicks(limb, camera, view, whole, distal, ballAt) };
}

/** The slender bone beside it, broken at about the same height. */
function splint(limb: DemoLimb, whole: Frame3, distal: Frame3): Solid[] {
  const { second, bone } = limb;
  if (!second) return [];
  const at = (
    z: number,
    length: number,
    ends: readonly [readonly [number, number, number], readonly [number, number, number]],
  ) => {
    const u = Math.min(1, Math.max(0, z / length));
    const mix = (i: 0 | 1 | 2) => ends[0][i] * (1 - u) + ends[1][i] * u;
    return { cx: mix(0), cy: mix(1), a: mix(2), b: mix(2) };
  };
  const middle = [0, 1, 2].map((i) => (second.proximal[i]! + second.distal[i]!) / 2) as [number, number, number];
  return [
    shaft(
      whole,
      [-0.93 * bone.proximalMm, -0.8 * bone.a],
      (z) => at(z + bone.proximalMm, bone.proximalMm, [second.proximal, middle]),
      BONE,
      0.4,
    ),
    shaft(distal, [0.6 * bone.a, 0.9 * bone.distalMm], (z) => at(z, bone.distalMm, [middle, second.distal]), BONE, 0.4),
  ];
}

/** The joints' other bones, a little way. */
function neighbours(limb: DemoLimb, whole: Frame3, distal: Frame3): Solid[] {
  const { bone } = limb;
  const w = 2 * bone.a;
  const gap = 0.28 * w;
  const above = frameAlong(
    toWorld(whole, [0.1 * w, 0.15 * w, -bone.proximalMm - gap]),
    turned(whole, [-0.32, -0.45, -1]),
    whole.x,
  );
  const below = frameAlong(
    toWorld(distal, [-0.05 * w, -0.1 * w, bone.distalMm + gap]),
    turned(distal, [0.12, 0.3, 1]),
    distal.x,
  );
  const knob = (size: number) => (z: number) => {
    const round = z < 0.7 * w ? Math.sqrt(Math.max(0.02, 1 - (1 - z / (0.7 * w)) ** 2)) : 1;
    const a = bone.a * (size * (1 + 0.75 * Math.exp(-((z / w) ** 2)))) * round;
    return { cx: 0, cy: 0, a, b: 0.9 * a };
  };
  return [shaft(above, [0, 7 * w], knob(1.05), BONE, 0.62), shaft(below, [0, 6 * w], knob(0.85), BONE, 0.55)];
}

function turned(f: Frame3, v: Vector): Vector {
  const p = toWorld(f, v);
  return [p[0] - f.origin[0], p[1] - f.origin[1], p[2] - f.origin[2]];
}

/** One tube of flesh that follows the bend, fuller towards the body. */
function softTissue(limb: DemoLimb, whole: Frame3, distal: Frame3): Solid {
  const { bone } = limb;
  const [top, mid, low] = limb.limb;
  const far = toWorld(distal, [0, 0, 1]);
  const origin = distal.origin;
  const step: Vector = [far[0] - origin[0], far[1] - origin[1], far[2] - origin[2]];
  const along = (axis: Vector) => axis[0] * step[0] + axis[1] * step[1] + axis[2] * step[2];
  const bend = [along(whole.x) / along(whole.z), along(whole.y) / along(whole.z)] as const;
  const soft = 5 * bone.a;
  const after = (z: number) => (z + Math.sqrt(z * z + soft * soft)) / 2;
  const size = (z: number) => {
    const u = z < 0 ? Math.min(1, -z / (1.15 * bone.proximalMm)) : Math.min(1, z / bone.distalMm);
    const smooth = u * u * (3 - 2 * u);
    return z < 0 ? mid + (top - mid) * smooth : mid + (low - mid) * smooth;
  };
  return shaft(
    whole,
    [-1.6 * bone.proximalMm, 1.6 * bone.distalMm],
    (z) => ({
      cx: bend[0] * after(z) - 0.12 * size(z),
      cy: bend[1] * after(z) - 0.22 * size(z),
      a: 0.86 * size(z),
      b: size(z),
    }),
    SOFT,
    0,
    true,
  );
}

/** A lead letter lying on the detector. */
function marker(side: 'L' | 'R', limb: DemoLimb): Solid[] {
  const unit = limb.pitchMm;
  const at = (c: number, r: number): Vector => [(560 + c) * unit, (64 + r) * unit, 1];
  const stroke = (c0: number, r0: number, c1: number, r1: number) => rod(at(c0, r0), at(c1, r1), 6 * unit, 20);
  const bar = box(frameAlong(at(-3, -3), [0, 0, 1], [1, 0, 0]), [6 * unit, 52 * unit, 1], 20);
  const strokes =
    side === 'L'
      ? [stroke(0, 46, 28, 46)]
      : [stroke(0, 0, 20, 3), stroke(20, 3, 20, 20), stroke(20, 20, 0, 23), stroke(6, 23, 26, 46)];
  return [bar, ...strokes];
}

/** What a surgeon would click: near enough, not exact. */
function clicks(
  limb: DemoLimb,
  camera: Camera,
  view: View,
  whole: Frame3,
  distal: Frame3,
  ballAt: Vector,
): Pick<LimbFilm, 'request' | 'fractureLine' | 'boneEnds'> {
  const { bone } = limb;
  const w = 2 * bone.a;
  const pixel = (p: Vector, slip: readonly [number, number] = [0, 0]): Pixel => {
    const [c, r] = shadowOf(camera, p);
    return [Math.round(c + slip[0]), Math.round(r + slip[1])];
  };
  const on = (frame: Frame3, z: number): Vector => {
    const s = outerAt(bone, z);
    const c = Math.cos(bone.turn);
    const q = Math.sin(bone.turn);
    return toWorld(frame, [c * s.cx - q * s.cy, q * s.cx + c * s.cy, z]);
  };
  const [slopeX, slopeY] = limb.obliquityDeg.map((d) => Math.tan(d * RADIANS)) as [number, number];
  const half = 1.35 * w;
  const lift = limb.shiftMm[2] / 2;
  const ends: readonly [Vector, Vector] =
    view === 'craniocaudal'
      ? [toWorld(whole, [-half, 0, lift - slopeX * half]), toWorld(whole, [half, 0, lift + slopeX * half])]
      : [toWorld(whole, [0, -half, lift - slopeY * half]), toWorld(whole, [0, half, lift + slopeY * half])];
  const fractureLine = [pixel(ends[0]), pixel(ends[1])] as const;
  return {
    request: {
      calibration: { kind: 'ball', diameterMm: limb.ballMm, near: pixel(ballAt, [4, -3]) },
      segments: [
        {
          name: 'proximal',
          from: pixel(on(whole, -bone.proximalMm + 0.5 * w), [2, 0]),
          to: pixel(on(whole, -0.55 * w), [-2, 1]),
        },
        {
          name: 'distal',
          from: pixel(on(distal, 0.55 * w), [1, -1]),
          to: pixel(on(distal, bone.distalMm - 0.5 * w), [-2, 0]),
        },
      ],
    },
    fractureLine,
    boneEnds: [pixel(on(whole, -bone.proximalMm)), pixel(on(distal, bone.distalMm))],
  };
}
