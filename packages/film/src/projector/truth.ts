/** Exact truth of a projected fragment: silhouettes by touching rays, axis, stations, and where no value is to be asked for. */
import type { Pixel } from '../model/trace.ts';
import { coordinatesOf, type LineFrame, lineFrame, pointAt } from '../trace/frame.ts';
import { type Camera, rayTo } from './project.ts';
import type { Solid } from './solids.ts';
import type { Tube } from './tube.ts';

export interface TrueStation {
  readonly sMm: number;
  readonly centre: Pixel;
  readonly outerMm: number;
  readonly canalMm: number;
  /** Null, or why no value is asked for: flare, fracture, overlap, metal. */
  readonly excluded: null | 'flare' | 'fracture' | 'overlap' | 'metal';
}

export interface TrueSegment {
  readonly axis: { readonly from: Pixel; readonly to: Pixel };
  readonly stations: readonly TrueStation[];
}

/** What else lies on the film, for the exclusions. */
export interface Others {
  readonly bones: readonly Solid[];
  readonly metal: readonly Solid[];
}

const STEP_MM = 0.5;
/** How near, across and along, something may come before it spoils a station. */
const NEAR_MM = { across: 0.7, along: 0.8 };

/** Columns across (pixels from the axis) where rays just touch the surface, left and right of `about`. */
function touches(
  tube: Tube,
  camera: Camera,
  frame: LineFrame,
  s: number,
  about: number,
  surface: 'outer' | 'canal',
): [number, number] | null {
  const at = (x: number) => {
    const p = pointAt(frame, s, x);
    return tube.grazes(rayTo(camera, p[0], p[1]), surface);
  };
  let middle = about;
  if (at(middle) <= 0) {
    // look about for any ray that meets it
    const found = Array.from({ length: 400 }, (_, i) => about + (i % 2 ? 1 : -1) * i * 0.5).find((x) => at(x) > 0);
    if (found === undefined) return null;
    middle = found;
  }
  const edge = (side: 1 | -1) => {
    let inside = middle;
    let out = middle;
    for (let reach = 1; at(out) > 0; reach *= 1.5) {
      inside = out;
      out = middle + side * reach;
    }
    for (let k = 0; k < 40; k++) {
      const half = (inside + out) / 2;
      if (at(half) > 0) inside = half;
      else out = half;
    }
    return (inside + out) / 2;
  };
  return [edge(-1), edge(1)];
}

/** Least-squares line through the silhouette's midpoints between the two (true) ends. */
export function trueAxis(tube: Tube, camera: Camera, from: Pixel, to: Pixel): LineFrame {
  let frame = lineFrame(from, to);
  for (let round = 0; round < 4; round++) {
    const n = 80;
    const points = Array.from({ length: n }, (_, i) => {
      const s = ((i + 0.5) / n) * frame.lengthPx;
      const t = touches(tube, camera, frame, s, 0, 'outer');
      return t ? ([s, (t[0] + t[1]) / 2] as const) : null;
    }).filter((p) => p !== null);
    const ms = points.reduce((a, p) => a + p[0], 0) / points.length;
    const mx = points.reduce((a, p) => a + p[1], 0) / points.length;
    const slope =
      points.reduce((a, p) => a + (p[0] - ms) * (p[1] - mx), 0) / points.reduce((a, p) => a + (p[0] - ms) ** 2, 0);
    const straight = lineFrame(
      pointAt(frame, 0, mx - slope * ms),
      pointAt(frame, frame.lengthPx, mx + slope * (frame.lengthPx - ms)),
    );
    frame = lineFrame(
      pointAt(straight, coordinatesOf(straight, from)[0], 0),
      pointAt(straight, coordinatesOf(straight, to)[0], 0),
    );
  }
  return frame;
}

export function trueSegment(
  tube: Tube,
  camera: Camera,
  frame: LineFrame,
  mmPerPixel: number,
  others: Others,
  flareZ: (s: number) => boolean,
): TrueSegment {
  const lengthMm = frame.lengthPx * mmPerPixel;
  const count = Math.floor(lengthMm / STEP_MM);
  const raw = Array.from({ length: count + 1 }, (_, i) => {
    const s = (i * STEP_MM) / mmPerPixel;
    const outer = touches(tube, camera, frame, s, 0, 'outer')!;
    const canal = touches(tube, camera, frame, s, (outer[0] + outer[1]) / 2, 'canal')!;
    return { s, outer, canal };
  });
  const fine = marks(tube, camera, frame, mmPerPixel, others);
  const stations = raw.map(({ s, outer, canal }, i): TrueStation => {
    const near = fine.filter((m) => Math.abs(m.s - s) * mmPerPixel <= NEAR_MM.along);
    const hit = (key: 'metal' | 'fracture' | 'overlap') => near.some((m) => m[key]);
    const before = raw[Math.max(0, i - 1)]!;
    const after = raw[Math.min(count, i + 1)]!;
    const slope =
      (after.outer[1] - after.outer[0] - (before.outer[1] - before.outer[0])) / Math.max(1e-9, after.s - before.s);
    const flare = flareZ(s) || Math.abs(slope) > 0.1;
    return {
      sMm: i * STEP_MM,
      centre: pointAt(frame, s, (outer[0] + outer[1]) / 2),
      outerMm: (outer[1] - outer[0]) * mmPerPixel,
      canalMm: (canal[1] - canal[0]) * mmPerPixel,
      excluded: hit('metal')
        ? 'metal'
        : hit('fracture')
          ? 'fracture'
          : hit('overlap')
            ? 'overlap'
            : flare
              ? 'flare'
              : null,
    };
  });
  return { axis: { from: frame.from, to: frame.to }, stations };
}

/** Every 0.2 mm along: is there metal, another bone or the fracture's face in the band? */
function marks(tube: Tube, camera: Camera, frame: LineFrame, mmPerPixel: number, others: Others) {
  const step = 0.2 / mmPerPixel;
  const from = -NEAR_MM.along / mmPerPixel;
  const n = Math.ceil((frame.lengthPx - 2 * from) / step);
  return Array.from({ length: n }, (_, i) => {
    const s = from + i * step;
    const inside = Math.min(frame.lengthPx, Math.max(0, s));
    const outer = touches(tube, camera, frame, inside, 0, 'outer');
    const mark = { s, metal: false, overlap: false, fracture: false };
    if (!outer) return mark;
    const margin = NEAR_MM.across / mmPerPixel;
    const across = Math.ceil((outer[1] - outer[0] + 2 * margin) / 1.5);
    for (let k = 0; k <= across; k++) {
      const x = outer[0] - margin + (k / across) * (outer[1] - outer[0] + 2 * margin);
      const p = pointAt(frame, s, x);
      const ray = rayTo(camera, p[0], p[1]);
      mark.metal ||= others.metal.some((o) => o.through(ray) > 0);
      mark.overlap ||= others.bones.some((o) => o.through(ray) > 0);
      if (x > outer[0] && x < outer[1]) mark.fracture ||= Math.abs(tube.through(ray) - tube.throughWhole(ray)) > 1e-9;
    }
    return mark;
  });
}
