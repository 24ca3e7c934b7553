/** Which other ways are tried and when they are offered; the mechanics are stood in for. */
import { profileOf } from '@bonewright/bone';
import { expect, test } from 'vitest';
import { STRAIGHT, straightCase } from '../checks/straight-bone.ts';
import { classOf } from '../loads/species.ts';
import type { Construct } from '../model/case-file.ts';
import type { Ground } from './candidates.ts';
import { otherWays, pinsWay } from './other-ways.ts';
import { siteBook } from './sites.ts';
import { solverFor } from './solve.ts';
import { standIn } from './stand-in-mechanics.ts';

const square: Construct = {
  im: null,
  pins: [8, 15, 23, 37, 45, 52].map((sMm) => ({ drawerId: 'pin', sMm, tiltDeg: 0, aboutDeg: 0 })),
  column: { drawerId: 'putty', clearanceMm: 4 },
  grip: 'usual',
};

/** Mechanics that find every other way so many times as good as square pins. */
function tried(times: number, more: Parameters<typeof straightCase>[0] = {}) {
  const patientCase = straightCase({ corridors: [{ fromMm: 0, toMm: 60, aboutDeg: [-40, 40] }], ...more });
  const { bone } = patientCase;
  const profile = profileOf(bone.lengthMm, bone.stations, classOf(patientCase));
  const ground: Ground = { patientCase, profile, aboutDeg: 0, sites: siteBook(patientCase, 0) };
  const seen: Construct[] = [];
  const { solve } = solverFor(patientCase, (_, construct) => {
    const isOther =
      pinsWay({ ...plain, pins: construct.pins.map((pin, i) => ({ ...plain.pins[i]!, ...pin })) }) !== 'square';
    seen.push(construct);
    return standIn(isOther ? times : 1).nominal(patientCase, construct);
  });
  const plain = standIn(1).nominal(patientCase, square);
  const start = solve(square)!;
  seen.length = 0;
  return { seen, offered: otherWays(ground, start, solve) };
}

test('smooth pins lean against each other by 25 degrees within a fragment, a middle one stays square', () => {
  const { seen } = tried(1);
  const leaned = seen.filter(({ pins }) => pins.some(({ tiltDeg }) => tiltDeg !== 0));
  expect(leaned.map(({ pins }) => pins.map(({ tiltDeg }) => tiltDeg + 0))).toEqual([
    [-25, 0, 25, -25, 0, 25],
    [25, 0, -25, 25, 0, -25],
  ]);
  for (const { pins } of leaned) {
    expect(pins[0]!.sMm).toBeGreaterThan(8);
    expect(pins[2]!.sMm).toBeLessThan(23);
  }
});

test('every other pin is turned, 20 degrees between them, only inside a marked corridor', () => {
  const turned = (corridors: NonNullable<Parameters<typeof straightCase>[0]>['corridors']) =>
    tried(1, { corridors }).seen.filter(({ pins }) => pins.some(({ aboutDeg }) => aboutDeg !== 0));
  expect(turned([{ fromMm: 0, toMm: 60, aboutDeg: [-40, 40] }])[0]?.pins.map(({ aboutDeg }) => aboutDeg)).toEqual([
    -10, 10, -10, 10, -10, 10,
  ]);
  expect(turned([{ fromMm: 0, toMm: 60, aboutDeg: [-5, 5] }])).toEqual([]);
  expect(turned([])).toEqual([]);
});

test('threaded pins stay square', () => {
  const pins = STRAIGHT.drawer.pins.map((pin) => ({ ...pin, kind: 'threaded-end' as const, coreDiameterMm: 0.7 }));
  const { seen } = tried(2, { drawer: { ...STRAIGHT.drawer, pins } });
  expect(seen.flatMap(({ pins: placed }) => placed).every(({ tiltDeg }) => tiltDeg === 0)).toBe(true);
});

test('offered only where it gains more than a twentieth', () => {
  expect(tried(1.02).offered).toEqual([]);
  const ways = tried(1.3).offered.map(({ plan }) => pinsWay(plan));
  expect(ways).toContain('two planes');
});
