/** What lies in the invented practice's drawer: a few sizes of wire, needles, putty. */
import type { Drawer } from '@bonewright/construct';

const WIRE_SIZES_MM = [0.8, 0.9, 1.0, 1.1, 1.2, 1.4, 1.6];
const NEEDLES = [
  { gauge: 21, diameterMm: 0.82 },
  { gauge: 19, diameterMm: 1.07 },
  { gauge: 18, diameterMm: 1.27 },
];

export const drawer: Drawer = {
  pins: [
    ...WIRE_SIZES_MM.map((diameterMm) => ({
      id: `wire ${diameterMm.toFixed(1)}`,
      diameterMm,
      kind: 'smooth' as const,
      material: 'steel-cold-worked',
      count: 8,
    })),
    {
      id: 'threaded 1.6',
      diameterMm: 1.6,
      coreDiameterMm: 1.2,
      kind: 'threaded-end',
      material: 'steel-cold-worked',
      count: 4,
    },
    ...NEEDLES.map(({ gauge, diameterMm }) => ({
      id: `needle ${gauge} G`,
      diameterMm,
      gauge,
      kind: 'needle' as const,
      material: 'steel-cold-worked',
      count: 20,
    })),
  ],
  imPins: [0.8, 1.0, 1.2, 1.6, 2.0].map((diameterMm) => ({
    id: `IM ${diameterMm.toFixed(1)}`,
    diameterMm,
    material: 'steel-cold-worked',
    count: 2,
  })),
  columns: [
    { id: 'putty 7', material: 'epoxy-putty', diameterMm: 7 },
    { id: 'putty 10', material: 'epoxy-putty', diameterMm: 10 },
  ],
};
