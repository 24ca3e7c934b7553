import type { Drawer } from '@bonewright/construct';

/** An id that no row of the drawer has yet. */
export function freshId(drawer: Drawer, stem: string): string {
  const taken = new Set([...drawer.pins, ...drawer.imPins, ...drawer.columns].map(({ id }) => id));
  let n = 1;
  while (taken.has(`${stem}-${n}`)) n += 1;
  return `${stem}-${n}`;
}
