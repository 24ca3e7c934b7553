import { expect, test } from 'vitest';
import { plannedRods, type RodFigure } from './planned-rods.ts';

const FIGURE: RodFigure = {
  pins: [
    {
      line: [
        [10, -3],
        [12, 14],
      ],
      diameterMm: 0.9,
      nearWall: [10.6, 2],
    },
  ],
  im: {
    line: [
      [-2, 1],
      [30, -1],
    ],
    diameterMm: 1.1,
  },
};

test('a pin enters from its far end of the drawing, the IM pin is compared where it passes the fracture', () => {
  const [pin, im] = plannedRods(FIGURE, 14);
  expect(pin).toEqual({ name: 'P1', kind: 'pin', near: [12, 14], tip: [10, -3], entry: [10.6, 2], diameterMm: 0.9 });
  // half-way from -2 to 30
  expect(im).toEqual({ name: 'IM', kind: 'im', near: [-2, 1], tip: [30, -1], entry: [14, 0], diameterMm: 1.1 });
});

test('a plan without an IM pin has pins only', () => {
  expect(plannedRods({ ...FIGURE, im: null }, 14).map((r) => r.name)).toEqual(['P1']);
});
