/** The command line's trace and align requests, read from JSON that nobody has checked. Bad input: InputError with its path. */
import { InputError } from '@bonewright/fault';
import type { Calibration, Pixel, SegmentClicks, TraceRequest } from '../model/trace.ts';

type Json = Readonly<Record<string, unknown>>;

/** `{film, calibration, segments}`: the film's path as written and what to trace on it. */
export function readTraceRequest(json: unknown): { film: string; request: TraceRequest } {
  const top = object(json, '');
  const film = text(top.film, 'film');
  const calibration = readCalibration(object(top.calibration, 'calibration'));
  const list = array(top.segments, 'segments');
  if (list.length < 1 || list.length > 2) {
    throw new InputError(`${list.length} segments given`, 'segments', 'give one, or the proximal and the distal one');
  }
  const segments = list.map(readSegment);
  if (segments.length === 2 && segments[0]!.name === segments[1]!.name) {
    throw new InputError(
      `both segments are named "${segments[0]!.name}"`,
      'segments[1].name',
      'give each its own name',
    );
  }
  return { film, request: { calibration, segments } };
}

/** `{views: [{angulationDeg}, {angulationDeg}], betweenViewsDeg}`. */
export function readAlignRequest(json: unknown): {
  angulationsDeg: readonly [number, number];
  betweenViewsDeg: number;
} {
  const top = object(json, '');
  const views = array(top.views, 'views');
  if (views.length !== 2) throw new InputError(`${views.length} views given`, 'views', 'give two');
  const [a, b] = views.map((v, i) => number(object(v, `views[${i}]`).angulationDeg, `views[${i}].angulationDeg`));
  return { angulationsDeg: [a!, b!], betweenViewsDeg: number(top.betweenViewsDeg, 'betweenViewsDeg') };
}

function readCalibration(c: Json): Calibration {
  const at = (key: string) => `calibration.${key}`;
  switch (c.kind) {
    case 'ball':
      return readBall(c);
    case 'scale': {
      const sdPercent = optional(c.sdPercent, (v) => number(v, at('sdPercent')));
      if (sdPercent !== undefined && sdPercent < 0)
        throw new InputError(`sdPercent ${sdPercent} is below 0`, at('sdPercent'));
      return { kind: 'scale', mmPerPixel: positive(c.mmPerPixel, at('mmPerPixel')), sdPercent };
    }
    case 'implant': {
      const across = array(c.across, at('across'));
      if (across.length !== 2) throw new InputError(`${across.length} edges given`, at('across'), 'give two');
      const [a, b] = across.map((edge, i) => pixel(edge, `${at('across')}[${i}]`));
      return { kind: 'implant', diameterMm: positive(c.diameterMm, at('diameterMm')), across: [a!, b!] };
    }
    case 'geometry': {
      const sourceToDetectorMm = positive(c.sourceToDetectorMm, at('sourceToDetectorMm'));
      return {
        kind: 'geometry',
        sourceToDetectorMm,
        objectToDetectorMm: heightBelow(c.objectToDetectorMm, sourceToDetectorMm, at('objectToDetectorMm')),
        detectorPitchMm: positive(c.detectorPitchMm, at('detectorPitchMm')),
      };
    }
    default:
      throw new InputError(
        `calibration kind ${JSON.stringify(c.kind ?? null)} is unknown`,
        at('kind'),
        'use ball, scale, implant or geometry',
      );
  }
}

function readBall(c: Json): Calibration {
  const at = (key: string) => `calibration.${key}`;
  const sourceToDetectorMm = optional(c.sourceToDetectorMm, (v) => positive(v, at('sourceToDetectorMm')));
  const height = (key: 'ballToDetectorMm' | 'objectToDetectorMm') =>
    optional(c[key], (v) => heightBelow(v, sourceToDetectorMm ?? Number.POSITIVE_INFINITY, at(key)));
  return {
    kind: 'ball',
    diameterMm: positive(c.diameterMm, at('diameterMm')),
    near: pixel(c.near, at('near')),
    sourceToDetectorMm,
    ballToDetectorMm: height('ballToDetectorMm'),
    objectToDetectorMm: height('objectToDetectorMm'),
  };
}

/** Clicks closer than this cannot give an axis. */
const SHORTEST_SEGMENT_PX = 12;

function readSegment(json: unknown, i: number): SegmentClicks {
  const path = `segments[${i}]`;
  const s = object(json, path);
  const from = pixel(s.from, `${path}.from`);
  const to = pixel(s.to, `${path}.to`);
  if (Math.hypot(to[0] - from[0], to[1] - from[1]) < SHORTEST_SEGMENT_PX) {
    throw new InputError(
      `the clicks lie less than ${SHORTEST_SEGMENT_PX} pixels apart`,
      path,
      'click near both ends of the fragment',
    );
  }
  return { name: text(s.name, `${path}.name`), from, to };
}

function object(v: unknown, path: string): Json {
  if (typeof v !== 'object' || v === null || Array.isArray(v)) throw missing(v, path, 'an object');
  return v as Json;
}

function array(v: unknown, path: string): readonly unknown[] {
  if (!Array.isArray(v)) throw missing(v, path, 'a list');
  return v;
}

function text(v: unknown, path: string): string {
  if (typeof v !== 'string' || v === '') throw missing(v, path, 'a text');
  return v;
}

function number(v: unknown, path: string): number {
  if (typeof v !== 'number' || !Number.isFinite(v)) throw missing(v, path, 'a number');
  return v;
}

function positive(v: unknown, path: string): number {
  const n = number(v, path);
  if (n <= 0) throw new InputError(`${n} is not above 0`, path, 'give a positive number');
  return n;
}

function heightBelow(v: unknown, sourceMm: number, path: string): number {
  const n = number(v, path);
  if (n < 0 || n >= sourceMm) {
    throw new InputError(
      `a height of ${n} mm does not lie between detector and source`,
      path,
      'measure from the detector upwards',
    );
  }
  return n;
}

function pixel(v: unknown, path: string): Pixel {
  const list = array(v, path);
  if (list.length !== 2) throw new InputError(`${list.length} numbers are no pixel`, path, 'give [column, row]');
  return [number(list[0], `${path}[0]`), number(list[1], `${path}[1]`)];
}

function optional<T>(v: unknown, read: (v: unknown) => T): T | undefined {
  return v === undefined || v === null ? undefined : read(v);
}

function missing(v: unknown, path: string, wanted: string): InputError {
  if (path === '') return new InputError(`the file does not hold ${wanted}`, '', `give ${wanted}`);
  const found = v === undefined ? 'nothing' : String(JSON.stringify(v)).slice(0, 40);
  return new InputError(`${found} where ${wanted} is needed`, path, `give ${wanted}`);
}
