import { LOADS, type LoadFigures, type LoadName, type Plan } from '@bonewright/construct';
import { expect, test } from 'vitest';
import { plansRanked } from './payloads.ts';
import { summariseRanking } from './plan-summary.ts';

const figures = (p05: number, weakest: string): LoadFigures => ({
  stiffness: 40,
  unit: 'N/mm',
  gapMotionMm: 0.02,
  gapStrainPercent: 2.5,
  peakPinMPa: 300,
  peakImMPa: null,
  peakColumnMPa: 12,
  peakBoneMPa: 40,
  margin: { p05, p50: p05 * 1.4, p95: p05 * 2, weakest },
});

const least: Record<LoadName, number> = {
  'axial-ball': 2.4,
  'axial-guided': 4.1,
  'bending-in-plane': 1.9,
  'bending-out-of-plane': 1.28,
  torsion: 1.31,
};

const plan: Plan = {
  label: 'no IM pin',
  lastResort: false,
  im: null,
  pins: [8, 18, 33, 44].map((sMm) => ({
    drawerId: 'a',
    sMm,
    tiltDeg: 5,
    aboutDeg: 0,
    diameterMm: 0.9,
    freeLengthMm: 6,
    ratio: 0.22,
    cutLengthMm: 22,
  })),
  column: [
    { drawerId: 'p', clearanceMm: 4, side: 'near', diameterMm: 7, fromMm: 4, toMm: 48, massG: 3 },
    { drawerId: 'p', clearanceMm: 4, side: 'far', diameterMm: 7, fromMm: 4, toMm: 48, massG: 3 },
  ],
  holes: 8,
  massG: 6.6,
  massPercentBody: 2.1,
  checks: [],
  loads: {
    'axial-ball': figures(least['axial-ball'], 'P2'),
    'axial-guided': figures(least['axial-guided'], 'P2'),
    'bending-in-plane': figures(least['bending-in-plane'], 'P2'),
    'bending-out-of-plane': figures(least['bending-out-of-plane'], 'P3 where it enters the column'),
    torsion: figures(least.torsion, 'P1'),
  },
  sensitivity: [],
  verdict: 'watch',
};

test('a ranking is kept as its constructs with the margin that decides', () => {
  const ranking = { plans: [plan], candidates: 900, solved: 40, refused: [{ check: 'pin-ratio', count: 7 }] };
  const kept = summariseRanking(ranking);
  expect(LOADS.every((load) => least[load] >= 1.28)).toBe(true);
  expect(kept.plans[0]).toMatchObject({
    label: 'no IM pin',
    verdict: 'watch',
    worst: { load: 'bending-out-of-plane', p05: 1.28, weakest: 'P3 where it enters the column' },
    construct: { im: null, column: [{ side: 'near' }, { side: 'far' }], pins: [{ sMm: 8, tiltDeg: 5 }, {}, {}, {}] },
  });
  expect(plansRanked.parse(kept)).toEqual(kept);
});

test('a ranking that found nothing keeps what is missing', () => {
  const ranking = { plans: [], candidates: 12, solved: 0, refused: [], nearest: 'a pin of 0.6 mm' };
  expect(plansRanked.parse(summariseRanking(ranking)).nearest).toBe('a pin of 0.6 mm');
});
