/**
 * Metal rods on a film near where the plan puts them: a matched filter for a bright straight band, then the band's two
 * edges row by row and a robust line through their middles. Pixels throughout.
 */
import type { GreyImage } from '../model/film.ts';
import type { Pixel } from '../model/trace.ts';
import { type Attenuation, attenuation } from '../trace/attenuation.ts';
import { type LineFrame, lineFrame, pointAt } from '../trace/frame.ts';
import { type Band, bandNear } from './band.ts';
import type { ExpectedRod, FoundRod, NoRod } from './rod.ts';
import { type RodEdges, rodEdges } from './rod-edges.ts';
import { endsOf } from './rod-ends.ts';

export interface PinSearch {
  /** How far beside its expected place a rod is looked for. */
  readonly reachPx: number;
  /** How far it may be turned. */
  readonly turnDeg: number;
}

/** A rod shorter on the film than this many of its widths points at the viewer. */
const SHORTEST_WIDTHS = 3;
const SHORTEST_PX = 12;
/** A rod and its neighbour share the room between them. */
const ROOM_SHARE = 0.45;

/** Looks for each expected rod; answers in their order. A rod is null (`NoRod`) where nothing like it is near. */
export function findPins(
  image: GreyImage,
  expected: readonly ExpectedRod[],
  search: PinSearch,
): readonly (FoundRod | NoRod)[] {
  const film = attenuation(image);
  return expected.map((rod) => {
    const others = expected.filter((o) => o !== rod);
    return findRod(film, rod, { ...search, reachPx: Math.min(search.reachPx, roomBeside(rod, others)) });
  });
}

function findRod(film: Attenuation, rod: ExpectedRod, search: PinSearch): FoundRod | NoRod {
  const { name, widthPx } = rod;
  const wanted = lineFrame(rod.near, rod.tip);
  if (!(wanted.lengthPx >= Math.max(SHORTEST_PX, SHORTEST_WIDTHS * widthPx))) {
    return { name, why: 'seen from this side it points at the viewer: too short to be measured' };
  }
  const band = bandNear(film, wanted, widthPx, search);
  if ('why' in band) return { name, why: band.why };
  const frame = turned(wanted, band);
  const edges = rodEdges(film, frame, widthPx);
  if ('why' in edges) return { name, why: edges.why };
  return measured(rod, film, frame, edges, search.reachPx);
}

/** The expected line moved and turned to where the band lies. */
function turned(frame: LineFrame, { offset, slope }: Band): LineFrame {
  const half = (slope * frame.lengthPx) / 2;
  return lineFrame(pointAt(frame, 0, offset - half), pointAt(frame, frame.lengthPx, offset + half));
}

function measured(
  { name, widthPx }: ExpectedRod,
  film: Attenuation,
  start: LineFrame,
  edges: RodEdges,
  beyondPx: number,
): FoundRod {
  const { offset, slope } = edges.line;
  const line = [pointAt(start, 0, offset), pointAt(start, start.lengthPx, offset + slope * start.lengthPx)] as const;
  const frame = lineFrame(line[0], line[1]);
  const ends = endsOf(film, frame, widthPx, beyondPx);
  return {
    name,
    line,
    acrossSdPx: edges.acrossSdPx,
    directionSdDeg: (edges.slopeSd * 180) / Math.PI,
    widthPx: edges.widthPx,
    widthSdPx: edges.widthSdPx,
    ...ends,
  };
}

/** How far beside a rod there is room before its nearest neighbour of about the same direction. */
function roomBeside(rod: ExpectedRod, others: readonly ExpectedRod[]): number {
  const frame = lineFrame(rod.near, rod.tip);
  const middle = (r: ExpectedRod): Pixel => [(r.near[0] + r.tip[0]) / 2, (r.near[1] + r.tip[1]) / 2];
  const gaps = others.flatMap((o) => {
    const its = lineFrame(o.near, o.tip);
    const isAlong = Math.abs(frame.along[0] * its.along[0] + frame.along[1] * its.along[1]) > Math.SQRT1_2;
    if (!isAlong) return [];
    const [p, q] = [middle(rod), middle(o)];
    return [Math.abs((q[0] - p[0]) * frame.across[0] + (q[1] - p[1]) * frame.across[1])];
  });
  return ROOM_SHARE * Math.min(Number.POSITIVE_INFINITY, ...gaps.filter((g) => g > rod.widthPx));
}
