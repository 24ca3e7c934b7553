import { expect, test } from 'vitest';
import { radiusAlong, sectionAt } from './section.ts';

const station = (sMm: number, outer: [number, number], canal: [number, number] | null) => ({
  sMm,
  outerMm: outer,
  canalMm: canal,
  offsetMm: [0, 0] as [number, number],
  sdMm: 0.05,
});
const stations = [station(0, [6, 5], null), station(10, [4, 3], [2, 1]), station(20, [4, 3], [2.4, 1.4])];

test('between stations a section is their mean, past the ends it is the last one', () => {
  expect(sectionAt(stations, 15)).toEqual({ outerMm: [4, 3], canalMm: [2.2, 1.2], offset: [0, 0] });
  expect(sectionAt(stations, 25).outerMm).toEqual([4, 3]);
  expect(sectionAt(stations, -3).outerMm).toEqual([6, 5]);
});

test('a canal measured on one side only is not made up between', () => {
  expect(sectionAt(stations, 5).canalMm).toBeNull();
  expect(sectionAt(stations, 10).canalMm).toEqual([2, 1]);
});

test('radius of an ellipse: half axes along the axes, x²/a² + y²/b² = 1 between them', () => {
  expect(radiusAlong([6, 4], 0)).toBeCloseTo(3, 12);
  expect(radiusAlong([6, 4], -90)).toBeCloseTo(2, 12);
  const r = radiusAlong([6, 4], 30);
  const [x, y] = [r * Math.cos(Math.PI / 6), r * Math.sin(Math.PI / 6)];
  expect((x / 3) ** 2 + (y / 2) ** 2).toBeCloseTo(1, 12);
});
