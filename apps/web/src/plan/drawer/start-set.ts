/** A drawer to begin with, so that the first plan needs no typing: common sizes, to be corrected to what the practice has. */
import type { Drawer } from '@bonewright/construct';

const STEEL = 'steel-cold-worked';

export const START_DRAWER: Drawer = {
  pins: [
    { id: 'wire 0.6', diameterMm: 0.6, kind: 'smooth', material: STEEL, count: 8 },
    { id: 'wire 0.8', diameterMm: 0.8, kind: 'smooth', material: STEEL, count: 8 },
    { id: 'wire 1.0', diameterMm: 1.0, kind: 'smooth', material: STEEL, count: 8 },
    { id: 'wire 1.2', diameterMm: 1.2, kind: 'smooth', material: STEEL, count: 6 },
    { id: 'wire 1.6', diameterMm: 1.6, kind: 'smooth', material: STEEL, count: 6 },
  ],
  imPins: [
    { id: 'IM 0.6', diameterMm: 0.6, material: STEEL, count: 2 },
    { id: 'IM 0.8', diameterMm: 0.8, material: STEEL, count: 2 },
    { id: 'IM 1.0', diameterMm: 1.0, material: STEEL, count: 2 },
    { id: 'IM 1.2', diameterMm: 1.2, material: STEEL, count: 2 },
    { id: 'IM 1.6', diameterMm: 1.6, material: STEEL, count: 2 },
  ],
  columns: [
    { id: 'putty 4.5', material: 'epoxy-putty', diameterMm: 4.5 },
    { id: 'putty 6', material: 'epoxy-putty', diameterMm: 6 },
    { id: 'putty 8', material: 'epoxy-putty', diameterMm: 8 },
  ],
};
