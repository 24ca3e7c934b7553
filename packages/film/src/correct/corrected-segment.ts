/** One traced fragment with the user's edges: walls, diameters, their sd, and what the corrections do to its axis. */
import { value } from '@bonewright/evidence';
import { InputError } from '@bonewright/fault';
import type { Measured, Pixel, TracedSegment, TraceStation } from '../model/trace.ts';
import { coordinatesOf, type LineFrame, lineFrame } from '../trace/frame.ts';
import { type Blended, blended, type Move } from './blend.ts';
import { type Correction, type EdgePlaced, isLeftOut, LEFT_OUT, WALL_SIDES, type WallSide } from './correction.ts';

/** Millimetres per pixel and its relative sd. */
export interface KnownScale {
  readonly mm: number;
  readonly relativeSd: number;
}

/** Across coordinates of a pair of walls, pixels. */
type Walls = readonly [number, number];
type Layer = 'outer' | 'canal';

interface Hand {
  readonly frame: LineFrame;
  readonly scale: KnownScale;
  /** Edges placed by station and side, pixels across. */
  readonly placed: ReadonlyMap<number, ReadonlyMap<WallSide, number>>;
  readonly leftOut: ReadonlySet<number>;
  /** The moves of each wall, carried along the bone. */
  readonly carried: Readonly<Record<WallSide, (s: number) => Blended>>;
}

/** The segment as corrected, about its old axis. Throws InputError for a segment without stations. */
export function correctedSegment(
  segment: TracedSegment,
  scale: KnownScale,
  corrections: readonly Correction[],
): TracedSegment {
  if (segment.stations.length === 0) {
    throw new InputError(
      `the ${segment.name} fragment has no stations to correct`,
      'corrections',
      'calibrate and trace the film first',
    );
  }
  const hand = handOf(segment, scale, corrections);
  const stations = segment.stations.map((station, i) => correctedStation(station, i, hand));
  return { ...segment, stations, notes: [...segment.notes, ...notesOf(segment, hand)] };
}

function handOf(segment: TracedSegment, scale: KnownScale, corrections: readonly Correction[]): Hand {
  const frame = lineFrame(segment.axis.from, segment.axis.to);
  const leftOut = new Set(corrections.filter(isLeftOut).map((c) => nearest(segment, c.sMm)));
  const placed = new Map<number, Map<WallSide, number>>();
  for (const c of corrections.filter((each): each is EdgePlaced => !isLeftOut(each))) {
    const i = nearest(segment, c.sMm);
    const sides = placed.get(i) ?? new Map<WallSide, number>();
    placed.set(i, sides.set(c.side, coordinatesOf(frame, c.place)[1]));
  }
  const reachPx = widthPx(segment, scale, frame);
  const carry = (side: WallSide) => blended(movesOf(segment, scale, frame, placed, side), reachPx);
  const [outerLeft, outerRight, canalLeft, canalRight] = WALL_SIDES.map(carry);
  const carried = {
    'outer-left': outerLeft!,
    'outer-right': outerRight!,
    'canal-left': canalLeft!,
    'canal-right': canalRight!,
  };
  return { frame, scale, placed, leftOut, carried };
}

function nearest(segment: TracedSegment, sMm: number): number {
  const away = segment.stations.map((s) => Math.abs(s.sMm - sMm));
  return away.indexOf(Math.min(...away));
}

/** The usual width of the bone in pixels; without any reading, the distance between two stations. */
function widthPx({ stations }: TracedSegment, { mm }: KnownScale, frame: LineFrame): number {
  const widths = stations.flatMap((s) => s.outerMm.value ?? []).toSorted((a, b) => a - b);
  const middle = widths[widths.length >> 1];
  return middle === undefined ? frame.lengthPx / stations.length : middle / mm;
}

function movesOf(
  segment: TracedSegment,
  { mm }: KnownScale,
  frame: LineFrame,
  placed: Hand['placed'],
  side: WallSide,
): Move[] {
  return [...placed].flatMap(([i, sides]) => {
    const station = segment.stations[i]!;
    const to = sides.get(side);
    const walls = wallsOf(station, layerOf(side), frame);
    if (to === undefined || !walls) return [];
    return [{ s: station.sMm / mm, byPx: to - walls[sideIndex(side)] }];
  });
}

const layerOf = (side: WallSide): Layer => (side.startsWith('outer') ? 'outer' : 'canal');
const sideIndex = (side: WallSide): 0 | 1 => (side.endsWith('left') ? 0 : 1);

function wallsOf(station: TraceStation, layer: Layer, frame: LineFrame): Walls | null {
  const pair = station.walls[layer];
  return pair && [coordinatesOf(frame, pair[0])[1], coordinatesOf(frame, pair[1])[1]];
}

function correctedStation(station: TraceStation, i: number, hand: Hand): TraceStation {
  const none = (why: string): Measured => ({ value: null, sd: null, why });
  if (hand.leftOut.has(i)) {
    const why = none(LEFT_OUT);
    return { ...station, outerMm: why, canalMm: why, walls: { outer: null, canal: null } };
  }
  const outer = correctedLayer(station, i, 'outer', hand);
  if (outer.walls === null) {
    const without = { ...station, outerMm: outer.measured, walls: { outer: null, canal: null } };
    return station.canalMm.value === null ? without : { ...without, canalMm: outer.measured };
  }
  const canal = correctedLayer(station, i, 'canal', hand);
  const isInside = canal.walls === null || (canal.walls[0] > outer.walls[0] && canal.walls[1] < outer.walls[1]);
  const { across } = hand.frame;
  const shift = (outer.walls[0] + outer.walls[1]) / 2 - coordinatesOf(hand.frame, station.centre)[1];
  const at = (walls: Walls): readonly [Pixel, Pixel] => {
    const x = coordinatesOf(hand.frame, station.centre)[1];
    const point = (w: number): Pixel => [
      station.centre[0] + (w - x) * across[0],
      station.centre[1] + (w - x) * across[1],
    ];
    return [point(walls[0]), point(walls[1])];
  };
  const isTouched = outer.isTouched || canal.isTouched;
  if (!isTouched) return station;
  return {
    sMm: station.sMm,
    centre: outer.isTouched
      ? [station.centre[0] + shift * across[0], station.centre[1] + shift * across[1]]
      : station.centre,
    outerMm: outer.measured,
    canalMm: isInside ? canal.measured : none('the canal placed by hand does not lie inside the wall'),
    walls: { outer: at(outer.walls), canal: isInside && canal.walls ? at(canal.walls) : null },
  };
}

interface CorrectedLayer {
  readonly measured: Measured;
  readonly walls: Walls | null;
  readonly isTouched: boolean;
}

/** A pair of walls where the hand and the trace together say them to be. */
function correctedLayer(station: TraceStation, i: number, layer: Layer, hand: Hand): CorrectedLayer {
  const { frame, scale } = hand;
  const measured = layer === 'outer' ? station.outerMm : station.canalMm;
  const walls = wallsOf(station, layer, frame);
  const sides = hand.placed.get(i);
  const placed = [sides?.get(`${layer}-left`), sides?.get(`${layer}-right`)] as const;
  if (!walls || measured.value === null) {
    if (placed[0] === undefined && placed[1] === undefined) return { measured, walls, isTouched: false };
    if (placed[0] === undefined || placed[1] === undefined) {
      const why = 'one edge placed by hand, nothing read at the other';
      return { measured: { value: null, sd: null, why }, walls: null, isTouched: true };
    }
    return judged([placed[0], placed[1]], null, scale);
  }
  const s = station.sMm / scale.mm;
  const blends = [hand.carried[`${layer}-left`](s), hand.carried[`${layer}-right`](s)] as const;
  if (blends[0].share === 0 && blends[1].share === 0) return { measured, walls, isTouched: false };
  const at = (k: 0 | 1) => placed[k] ?? walls[k] + blends[k].byPx;
  const px = walls[1] - walls[0];
  const ownVariance = Math.max(0, (measured.sd! / scale.mm) ** 2 - (scale.relativeSd * px) ** 2) / 2;
  return judged([at(0), at(1)], { blends, ownVariance }, scale);
}

/** Value and sd of the pair; without `trace` both edges are the hand's alone. */
function judged(
  walls: Walls,
  trace: { readonly blends: readonly [Blended, Blended]; readonly ownVariance: number } | null,
  { mm, relativeSd }: KnownScale,
): CorrectedLayer {
  const px = walls[1] - walls[0];
  if (!(px > 0)) {
    const why = 'the edges placed by hand cross';
    return { measured: { value: null, sd: null, why }, walls: null, isTouched: true };
  }
  const click = value('measure.click.sd') ** 2;
  const variance = ({ share, byPx }: Blended) =>
    // between hand and trace nobody knows how far the trace's mistake reaches
    (1 - share) * trace!.ownVariance + share * click + (share * (1 - share) * byPx) ** 2;
  const both = trace ? variance(trace.blends[0]) + variance(trace.blends[1]) : 2 * click;
  const sd = Math.hypot(Math.sqrt(both), relativeSd * px) * mm;
  return { measured: { value: px * mm, sd }, walls, isTouched: true };
}

function notesOf(segment: TracedSegment, hand: Hand): string[] {
  const at = (i: number) => `${segment.stations[i]!.sMm.toFixed(1)} mm`;
  return [
    ...[...hand.placed].flatMap(([i, sides]) =>
      [...sides.keys()].map((side) => `${at(i)}: ${side.replace('-', ' wall, ')}, placed by hand`),
    ),
    ...[...hand.leftOut].map((i) => `${at(i)}: ${LEFT_OUT}`),
  ];
}
