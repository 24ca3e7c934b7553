/** Where a pin stands by what one film shows of it against the plan, as theatre writes it down. */
import type { ViewFigure } from '../figure/view-figure.ts';
import type { Construct } from '../model/case-file.ts';
import type { PlacedPin } from './placed.ts';

/** As seen in that view: place and depth in mm, tilt in degrees, the tip leaning distally positive. */
export interface SeenOnFilm {
  readonly placeMm: number;
  readonly tiltDeg: number;
  /** Null where the tip is not seen. */
  readonly depthMm: number | null;
}

const RADIANS = Math.PI / 180;

/**
 * The pin of a construct as that view shows it. Its direction about the bone is the plan's: one film does not show it.
 * A tip that is not seen is taken to stand as planned.
 */
export function placedFromFilm(figure: ViewFigure, construct: Construct, pin: number, seen: SeenOnFilm): PlacedPin {
  const planned = construct.pins[pin - 1]!;
  const { line, nearWall, diameterMm } = figure.pins[pin - 1]!;
  const [tip, end] = [line[0]!, line.at(-1)!];
  const leanPlanned = Math.atan2(tip[0] - end[0], Math.abs(tip[1] - end[1]));
  const lean = leanPlanned + seen.tiltDeg * RADIANS;
  const inside = Math.abs(nearWall[1] - middleAt(figure, planned.sMm));
  const about = planned.aboutDeg * RADIANS;
  const inPlane = Math.abs(figure.view === 'craniocaudal' ? Math.cos(about) : Math.sin(about));
  const wasShort = planned.cortices === 1;
  const isShort = seen.depthMm === null ? wasShort : isShortOf(wasShort, seen.depthMm, diameterMm, inside);
  return {
    pin,
    sMm: Math.max(0, nearWall[0] + seen.placeMm + inside * Math.tan(lean)),
    aboutDeg: planned.aboutDeg,
    tiltDeg: -Math.atan(Math.tan(lean) * inPlane) / RADIANS,
    cortices: isShort ? 1 : 2,
  };
}

/** Planned tips stand half a diameter proud of the far wall, or two diameters into the near one. */
function isShortOf(wasShort: boolean, depthMm: number, diameterMm: number, insideMm: number): boolean {
  return wasShort ? depthMm < 2 * insideMm - 2 * diameterMm : depthMm < -diameterMm;
}

/** Half way between the walls of the bone in that view. */
function middleAt({ fragments }: ViewFigure, sMm: number): number {
  const all = fragments.flatMap(({ outer: [low, high] }) => low.map(([s, w], i) => ({ s, w: (w + high[i]![1]) / 2 })));
  return all.reduce((best, one) => (Math.abs(one.s - sMm) < Math.abs(best.s - sMm) ? one : best)).w;
}
