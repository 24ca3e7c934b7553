import type { FilmState } from '@bonewright/casebook';
import { expect, test } from 'vitest';
import { filmMap } from './film-map.ts';
import { draggedDeg, draggedMm, moved } from './fragment-move.ts';

const signed = <T>(value: T) => ({ value, seq: 1, at: '2026-11-25T22:00:00Z', by: 'test' });
const measured = (value: number) => ({ value, sd: 0.01 });

/** A bone 40 mm long, 0.1 mm a pixel: proximal part straight down from row 100, distal part turned by 30 degrees. */
const bend = (30 * Math.PI) / 180;
const kneePx = [200, 300] as const;
const alongPx = (px: number): [number, number] => [kneePx[0] - px * Math.sin(bend), kneePx[1] + px * Math.cos(bend)];
function bentFilm(columnTowards: 'medial' | 'lateral'): FilmState {
  const segments = [
    { name: 'proximal', from: [200, 100] as [number, number], to: [200, 290] as [number, number] },
    { name: 'distal', from: alongPx(10), to: alongPx(200) },
  ];
  return {
    filmId: 'film-one',
    file: signed({
      filmId: 'film-one',
      sha256: '',
      fileName: 'a.dcm',
      byteLength: 1,
      rows: 600,
      cols: 400,
      view: 'craniocaudal',
      takenAt: null,
    }),
    view: signed('craniocaudal'),
    calibration: null,
    clicks: signed({ segments, columnTowards }),
    trace: signed({
      mmPerPixel: measured(0.1),
      ball: null,
      ballHeightErrorPercent: null,
      segments: segments.map(({ name, from, to }) => ({ name, axis: { from, to }, stations: [], notes: [] })),
      angulationDeg: measured(30),
      translationMm: measured(0),
    }),
    fractureLine: signed([
      [180, 300],
      [220, 300],
    ]),
  };
}

/** Applies the SVG transform `translate rotate translate` as a browser would. */
function applied(transform: string, [x, y]: readonly [number, number]): readonly [number, number] {
  const [tx = 0, ty = 0, turn = 0, ux = 0, uy = 0] = (transform.match(/-?\d[\d.e-]*/g) ?? []).map(Number);
  const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  return [tx + c * (x + ux) - s * (y + uy), ty + s * (x + ux) + c * (y + uy)];
}

test('the bone’s ends lie where they were clicked; across the bone medial lies on its side of the film', () => {
  const map = filmMap(bentFilm('medial'), 40)!;
  expect(map.pixel(0, 0)).toEqual([200, 100]);
  expect(map.pixel(10, 2)[0]).toBeCloseTo(220, 9);
  expect(filmMap(bentFilm('lateral'), 40)!.pixel(10, 2)[0]).toBeCloseTo(180, 9);
});

test('the reduced distal part runs straight on from the proximal one', () => {
  const map = filmMap(bentFilm('medial'), 40)!;
  const end = applied(map.reduce, alongPx(200));
  const start = applied(map.reduce, alongPx(10));
  expect(end[0]).toBeCloseTo(200, 6);
  expect(end[1]).toBeCloseTo(500, 6);
  expect(start[0]).toBeCloseTo(200, 6);
  expect(start[1]).toBeCloseTo(310, 6);
});

const turnBack = { translationMm: [0, 0], angulationDeg: [30, 0], lengthMm: 0 } as const;

test('turned back about the fracture by its bend, the distal part runs on; the plan follows the bone as it was left', () => {
  const map = filmMap(bentFilm('medial'), 40, turnBack)!;
  expect(map.lever.pivot[0]).toBeCloseTo(200, 9);
  expect(map.lever.pivot[1]).toBeCloseTo(300, 9);
  const left = filmMap(bentFilm('medial'), 40, { ...turnBack, angulationDeg: [0, 0] })!;
  // A bone bent by 30 degrees in its middle: its distal end lies 100 px sin 30 lateral of the knee.
  const end = left.pixel(40 * Math.cos((15 * Math.PI) / 180), 0);
  expect(end[0]).toBeCloseTo(alongPx(200)[0], 0);
  expect(end[1]).toBeCloseTo(alongPx(200)[1], 0);
});

test.each(['medial', 'lateral'] as const)('a drag on a film with %s to the right is that move, in mm', (towards) => {
  const { lever } = filmMap(bentFilm(towards), 40)!;
  const [across, along] = draggedMm(lever, [12, 5]);
  expect(across).toBeCloseTo(towards === 'medial' ? 1.2 : -1.2, 9);
  expect(along).toBeCloseTo(0.5, 9);
  const shifted = moved(lever, { translationMm: [across, 0], lengthMm: along }, 0).place([50, 60]);
  expect(shifted[0]).toBeCloseTo(62, 9);
  expect(shifted[1]).toBeCloseTo(65, 9);
  const deg = draggedDeg(lever, [200, 300], [200, 400], [150, 300 + Math.sqrt(7500)]);
  const turned = moved(lever, { angulationDeg: [deg, 0] }, 0).place([200, 400]);
  expect(turned[0]).toBeCloseTo(150, 9);
});

test('a film without a trace has no map', () => {
  expect(filmMap({ ...bentFilm('medial'), trace: null }, 40)).toBeNull();
});
