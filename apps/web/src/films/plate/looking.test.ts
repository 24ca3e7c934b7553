import { expect, test } from 'vitest';
import { AS_OPENED, dragged, lookedAt, swapped, withWindow } from './looking.ts';

const film = (centre: number, width: number) => {
  const best = {
    name: 'on the bone',
    look: { kind: 'window', window: { centre, width }, voiFunction: 'LINEAR' },
  } as const;
  return { looks: [best], best };
};

test('one drag suits two films of quite different values, each in its own measure', () => {
  const levels = dragged(AS_OPENED, 64, 128);
  expect(lookedAt(levels, film(1000, 400)).window).toEqual({ centre: 1200, width: 800 });
  expect(lookedAt(levels, film(30_000, 20_000)).window).toEqual({ centre: 40_000, width: 40_000 });
});

test('a window set by hand is the window that is seen, and has no name', () => {
  const offered = film(1000, 400);
  const seen = lookedAt(withWindow(swapped(AS_OPENED), offered, { centre: 700, width: 90 }), offered);
  expect(seen.name).toBeNull();
  expect(seen.window.centre).toBeCloseTo(700, 9);
  expect(seen.window.width).toBeCloseTo(90, 9);
  expect(seen.look.swapped).toBe(true);
});
