import { InputError } from '@bonewright/fault';
import { describe, expect, test } from 'vitest';
import { readAlignRequest, readTraceRequest } from './read-requests.ts';

const good = {
  film: 'a.dcm',
  calibration: { kind: 'ball', diameterMm: 10, near: [812, 300] },
  segments: [
    { name: 'proximal', from: [410, 220], to: [428, 610] },
    { name: 'distal', from: [440, 640], to: [470, 1010] },
  ],
};

test('the example of the command line is read as it stands', () => {
  const { film, request } = readTraceRequest(good);
  expect(film).toBe('a.dcm');
  expect(request.segments.map((s) => s.name)).toEqual(['proximal', 'distal']);
  expect(request.calibration).toMatchObject({ kind: 'ball', diameterMm: 10, near: [812, 300] });
});

describe('bad input is refused with its path', () => {
  const refused = (change: object) => {
    try {
      readTraceRequest({ ...good, ...change });
    } catch (error) {
      if (error instanceof InputError) return error.path;
      throw error;
    }
    return 'nothing was refused';
  };
  test.each([
    [{ film: 7 }, 'film'],
    [{ calibration: undefined }, 'calibration'],
    [{ calibration: { kind: 'guess' } }, 'calibration.kind'],
    [{ calibration: { kind: 'ball', diameterMm: 0, near: [1, 1] } }, 'calibration.diameterMm'],
    [{ calibration: { kind: 'ball', diameterMm: 5, near: [1] } }, 'calibration.near'],
    [{ calibration: { kind: 'ball', diameterMm: 5, near: [1, '1'] } }, 'calibration.near[1]'],
    [{ calibration: { kind: 'scale', mmPerPixel: Number.NaN } }, 'calibration.mmPerPixel'],
    [
      { calibration: { kind: 'geometry', sourceToDetectorMm: 700, objectToDetectorMm: 800, detectorPitchMm: 0.1 } },
      'calibration.objectToDetectorMm',
    ],
    [{ segments: [] }, 'segments'],
    [{ segments: [good.segments[0], { ...good.segments[1], name: 'proximal' }] }, 'segments[1].name'],
    [{ segments: [{ name: 'p', from: [1, 1], to: [2, 2] }] }, 'segments[0]'],
  ])('%j', (change, path) => {
    expect(refused(change)).toBe(path);
  });

  test('no object at all', () => {
    expect(() => readTraceRequest([])).toThrow(InputError);
    expect(() => readTraceRequest(null)).toThrow(InputError);
  });
});

test('align reads two angles and what lies between the views', () => {
  expect(readAlignRequest({ views: [{ angulationDeg: 19 }, { angulationDeg: 14 }], betweenViewsDeg: 90 })).toEqual({
    angulationsDeg: [19, 14],
    betweenViewsDeg: 90,
  });
  expect(() => readAlignRequest({ views: [{ angulationDeg: 19 }], betweenViewsDeg: 90 })).toThrow(/views/);
});
