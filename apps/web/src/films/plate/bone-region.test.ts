import { expect, test } from 'vitest';
import { boneRegion, ROOM_TO_SEE, viewOf } from './bone-region.ts';
import { STRAIGHT } from './turn.ts';
import { screenPlace } from './viewport.ts';

const film = { cols: 640, rows: 960 };

test('three clicks of four mark out nothing, nor do four on one spot', () => {
  expect(boneRegion([[1, 1], [2, 2], [3, 3], null], film, ROOM_TO_SEE)).toBeNull();
  expect(
    boneRegion(
      [
        [0, 0],
        [0, 0],
        [0, 0],
        [0, 0],
      ],
      film,
      ROOM_TO_SEE,
    ),
  ).toBeNull();
});

test('every click is seen in the view on the bone, with room on all sides', () => {
  const clicks = [
    [301, 342],
    [304, 455],
    [301, 479],
    [281, 604],
  ] as const;
  const region = boneRegion(clicks, film, ROOM_TO_SEE);
  if (!region) throw new Error('four clicks mark out a region');
  const plate = { width: 440, height: 660 };
  for (const click of clicks) {
    const [x, y] = screenPlace(viewOf(region, plate, STRAIGHT), plate, click);
    expect(Math.min(x, 440 - x, y, 660 - y)).toBeGreaterThan(40);
  }
});

test('the region stays inside the film', () => {
  expect(
    boneRegion(
      [
        [5, 2],
        [5, 400],
        [5, 500],
        [5, 958],
      ],
      film,
      ROOM_TO_SEE,
    ),
  ).toMatchObject({ left: 0, top: 0, bottom: 960 });
});
