/** Random broken bones on random films with their exact truth: the ground on which the trace is tuned and judged. */
import { value } from '@bonewright/evidence';
import type { GreyImage } from '../model/film.ts';
import type { Calibration, Pixel, SegmentClicks, TraceRequest } from '../model/trace.ts';
import { coordinatesOf, lineFrame } from '../trace/frame.ts';
import { fragment, isFlare, type LongBone } from './long-bone.ts';
import { type Camera, project, shadowOf } from './project.ts';
import { type Random, seededRandom } from './random.ts';
import { jag, randomBone, randomKind, randomMetal, secondBone, softTissue } from './random-limb.ts';
import { ball, type Solid } from './solids.ts';
import { type TrueSegment, trueAxis, trueSegment } from './truth.ts';
import type { Tube } from './tube.ts';
import { frameAlong, toWorld, type Vector } from './vector.ts';

export interface RandomFilm {
  readonly image: GreyImage;
  readonly request: TraceRequest;
  readonly truth: {
    readonly mmPerPixel: number;
    readonly segments: readonly [TrueSegment, TrueSegment];
    readonly angulationDeg: number;
    /** At the end of the true proximal axis. */
    readonly translationMm: number;
  };
  /** What was drawn, in words, for whoever looks for a pattern in the misses. */
  readonly about: string;
}

/** Widths of a bone on a film, pixels. */
const WIDTHS_PX = [18, 75] as const;

/** The film of that seed, its bone between the two widths in pixels. */
export function randomFilm(seed: number, [narrowPx, widePx]: readonly [number, number] = WIDTHS_PX): RandomFilm {
  const r = seededRandom(seed);
  const widthMm = Math.exp(r.between(Math.log(2), Math.log(9)));
  const widthPx = Math.exp(r.between(Math.log(narrowPx), Math.log(widePx)));
  const pitchMm = widthMm / widthPx;
  const bone = randomBone(r, widthMm);
  const heightMm = r.between(8, 45);
  const sourceToDetectorMm = r.between(600, 1100);
  const lengthMm = bone.proximalMm + bone.distalMm;
  const camera: Camera = {
    cols: Math.round((7.5 * widthMm) / pitchMm + 180),
    rows: Math.round((1.1 * lengthMm) / pitchMm + 60),
    pitchMm,
    sourceToDetectorMm,
  };
  const scene = layOut(r, bone, camera, heightMm);
  const film = randomKind(r, bone);
  const image = project({ camera, solids: scene.solids, film, seed: seed * 7 + 1 });
  const mmPerPixel = (pitchMm * (sourceToDetectorMm - heightMm)) / sourceToDetectorMm;
  const segments = scene.tubes.map((t, k) =>
    segmentTruth(r, bone, scene, camera, t, k as 0 | 1, mmPerPixel, widthMm),
  ) as [SegmentTruth, SegmentTruth];
  const [p, d] = segments;
  const a = lineFrame(p.truth.axis.from, p.truth.axis.to);
  const b = lineFrame(d.truth.axis.from, d.truth.axis.to);
  const angle = Math.atan2(
    a.along[0] * b.along[1] - a.along[1] * b.along[0],
    a.along[0] * b.along[0] + a.along[1] * b.along[1],
  );
  const [s, x] = coordinatesOf(a, b.from);
  return {
    image,
    request: { calibration: scene.calibration(r, pitchMm, mmPerPixel), segments: [p.clicks, d.clicks] },
    truth: {
      mmPerPixel,
      segments: [p.truth, d.truth],
      angulationDeg: (angle * 180) / Math.PI,
      translationMm: (x + (a.lengthPx - s) * Math.tan(angle)) * mmPerPixel,
    },
    about: `${widthMm.toFixed(1)} mm, ${widthPx.toFixed(0)} px, canal ${bone.canalShare.toFixed(2)}, blur ${film.blurPx.toFixed(2)}, ${film.relationship} ${film.photometric}, ${scene.about}`,
  };
}

interface Layout {
  readonly solids: readonly Solid[];
  readonly tubes: readonly [Tube, Tube];
  readonly second: readonly Solid[];
  readonly metal: readonly Solid[];
  readonly about: string;
  calibration(r: Random, pitchMm: number, mmPerPixel: number): Calibration;
}

const RADIANS = Math.PI / 180;

function layOut(r: Random, bone: LongBone, camera: Camera, heightMm: number): Layout {
  const widthMm = 2 * bone.a;
  const scale = camera.sourceToDetectorMm / (camera.sourceToDetectorMm - heightMm);
  const at = (fx: number, fy: number, z: number): Vector => {
    const mx = ((camera.cols - 1) / 2) * camera.pitchMm;
    const my = ((camera.rows - 1) / 2) * camera.pitchMm;
    return [
      mx + ((fx - 0.5) * camera.cols * camera.pitchMm) / scale,
      my + ((fy - 0.5) * camera.rows * camera.pitchMm) / scale,
      z,
    ];
  };
  const tilt = () => Math.tan(r.between(-7, 7) * RADIANS);
  const origin = at(0.5 + r.between(-0.04, 0.04), bone.proximalMm / (bone.proximalMm + bone.distalMm), heightMm);
  const along: Vector = [Math.tan(r.between(-6, 6) * RADIANS), 1, tilt()];
  const across: Vector = [1, 0, 0];
  const proximal = frameAlong(origin, along, across);
  const bend = Math.tan(r.between(-16, 16) * RADIANS);
  const shift: Vector = [
    r.between(-0.35, 0.35) * widthMm,
    r.between(-0.3, 0.3) * widthMm,
    r.between(0.15, 0.6) * widthMm,
  ];
  const distal = frameAlong(toWorld(proximal, shift), [along[0] + bend, 1, along[2] + tilt() / 2], across);
  const face = {
    at: 0,
    slopeX: Math.tan(r.between(-35, 35) * RADIANS),
    slopeY: Math.tan(r.between(-20, 20) * RADIANS),
    jag: jag(r, widthMm),
  };
  const tubes = [fragment(bone, proximal, 'proximal', face), fragment(bone, distal, 'distal', face)] as const;
  const second = secondBone(r, bone, [proximal, distal]);
  const metal = randomMetal(r, bone, [proximal, distal]);
  const soft = softTissue(r, bone, [proximal, distal]);
  const diameterMm = Math.max(widthMm, r.between(30, 80) * camera.pitchMm);
  const ballAt = at(r.chance(0.5) ? 0.12 : 0.88, r.between(0.15, 0.85), heightMm);
  const kind = r.uniform();
  const solids: Solid[] = [...tubes, ...second, ...metal, ...soft];
  if (kind < 0.45) solids.push(ball(ballAt, diameterMm / 2, value('imaging.steel.attenuation')));
  return {
    solids,
    tubes,
    second,
    metal,
    about: `${second.length > 0 ? 'second bone' : 'alone'}, ${metal.length} metal`,
    calibration: (draw, pitchMm, mmPerPixel) => {
      if (kind < 0.45) {
        const p = shadowOf(camera, ballAt);
        const radius = diameterMm / 2 / mmPerPixel;
        return {
          kind: 'ball',
          diameterMm,
          near: [p[0] + draw.between(-0.4, 0.4) * radius, p[1] + draw.between(-0.4, 0.4) * radius],
        };
      }
      if (kind < 0.75) {
        return {
          kind: 'geometry',
          sourceToDetectorMm: camera.sourceToDetectorMm,
          objectToDetectorMm: heightMm,
          detectorPitchMm: pitchMm,
        };
      }
      const sdPercent = draw.between(0.2, 0.5);
      return { kind: 'scale', mmPerPixel: mmPerPixel * (1 + (draw.normal() * sdPercent) / 100), sdPercent };
    },
  };
}

interface SegmentTruth {
  readonly clicks: SegmentClicks;
  readonly truth: TrueSegment;
}

function segmentTruth(
  r: Random,
  bone: LongBone,
  scene: Layout,
  camera: Camera,
  tube: Tube,
  k: 0 | 1,
  mmPerPixel: number,
  widthMm: number,
): SegmentTruth {
  const { frame } = tube.shape;
  const sign = k === 0 ? -1 : 1;
  const nearZ = sign * r.between(0.35, 0.9) * widthMm;
  const farZ =
    sign * Math.min(r.between(4, 5.2) * widthMm, (k === 0 ? bone.proximalMm : bone.distalMm) - 1.2 * widthMm);
  const centreAt = (z: number): Pixel => {
    const s = tube.shape.outer(z);
    const c = Math.cos(tube.shape.turn);
    const q = Math.sin(tube.shape.turn);
    return shadowOf(camera, toWorld(frame, [c * s.cx - q * s.cy, q * s.cx + c * s.cy, z]));
  };
  const off = (0.2 * widthMm) / mmPerPixel;
  const click = (p: Pixel): Pixel => {
    const angle = r.between(0, 2 * Math.PI);
    const reach = off * Math.sqrt(r.uniform());
    return [Math.round(p[0] + reach * Math.cos(angle)), Math.round(p[1] + reach * Math.sin(angle))];
  };
  const ends = k === 0 ? [centreAt(farZ), centreAt(nearZ)] : [centreAt(nearZ), centreAt(farZ)];
  const clicks: SegmentClicks = { name: k === 0 ? 'proximal' : 'distal', from: click(ends[0]!), to: click(ends[1]!) };
  const axis = trueAxis(tube, camera, clicks.from, clicks.to);
  const fromZ = k === 0 ? farZ : nearZ;
  const truth = trueSegment(
    tube,
    camera,
    axis,
    mmPerPixel,
    { bones: [...scene.second, ...scene.tubes.filter((t) => t !== tube)], metal: scene.metal },
    (s) => isFlare(bone, fromZ + s * mmPerPixel),
  );
  return { clicks, truth };
}
