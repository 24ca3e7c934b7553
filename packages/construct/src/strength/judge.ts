/** How many times a place bears what it is asked: once at the misstep, again and again at every step. */
import type { Figures, RodFigures } from '../model/figures.ts';
import type { Layout } from '../to-frame/layout.ts';
import type { Place } from './places.ts';
import { axialOf, columnStress, type EndForces, holeStress, rodStress, shearOf } from './stress.ts';

export interface Worth {
  /** Capacity over demand, the lesser of once and again and again. */
  readonly margin: number;
  /** Largest stress in MPa under the load, or the shear or bearing stress for what slides or presses. */
  readonly stressMPa: number;
}

/** Judges one place under one load. `forces` are those of the place's member end. */
export function worthOf(place: Place, forces: EndForces, figures: Figures, layout: Layout): Worth {
  switch (place.kind) {
    case 'pin':
      return pinWorth(place, forces, figures);
    case 'im':
      return imWorth(place.bent, forces, figures);
    case 'column':
      return columnWorth(place, forces, figures);
    case 'hole':
      return onceOnly(holeStress(forces, figures, layout, place.pin), boneYield(figures));
    case 'bearing':
      return onceOnly(bearingStress(place, forces, figures, layout), boneYield(figures));
    case 'slide':
      return slideWorth(place, forces, figures, layout);
  }
}

const boneYield = ({ boneYoungMPa, boneYieldStrain }: Figures): number => boneYoungMPa * boneYieldStrain;

const onceOnly = (stressMPa: number, bearsMPa: number): Worth => ({ margin: bearsMPa / stressMPa, stressMPa });

function both(stressMPa: number, yieldMPa: number, fatigueMPa: number, { demand }: Figures): Worth {
  return { margin: Math.min(yieldMPa, fatigueMPa / demand.repeatedShare) / stressMPa, stressMPa };
}

function pinWorth(place: Place & { kind: 'pin' }, forces: EndForces, figures: Figures): Worth {
  const pin = figures.pins[place.pin]!;
  const diameterMm = place.inBone ? pin.coreMm : pin.diameterMm;
  return both(rodStress(forces, { diameterMm, boreMm: pin.boreMm }), pin.yieldMPa, pin.fatigueMPa, figures);
}

function imWorth(bent: boolean, forces: EndForces, figures: Figures): Worth {
  const im = figures.im!;
  const [once, again] = bent ? [im.bentYieldMPa, im.bentFatigueMPa] : [im.yieldMPa, im.fatigueMPa];
  return both(rodStress(forces, im), once, again, figures);
}

function columnWorth(place: Place & { kind: 'column' }, forces: EndForces, figures: Figures): Worth {
  const column = figures.columns[place.column]!;
  const through: RodFigures = place.through === 'im' ? figures.im! : figures.pins[place.through]!;
  return both(columnStress(forces, column, through.diameterMm), column.yieldMPa, column.fatigueMPa, figures);
}

/** Force across the pin over the wall it presses on. */
function bearingStress(
  place: Place & { kind: 'bearing' },
  forces: EndForces,
  figures: Figures,
  layout: Layout,
): number {
  const { wallMm } = layout.pins[place.pin]![place.side];
  return shearOf(forces) / (figures.pins[place.pin]!.coreMm * wallMm);
}

function slideWorth(place: Place & { kind: 'slide' }, forces: EndForces, figures: Figures, layout: Layout): Worth {
  const { embeddedMm } = layout.pins[place.pin]!.entries[place.column]!;
  const stressMPa = axialOf(forces) / (Math.PI * figures.pins[place.pin]!.diameterMm * embeddedMm);
  return onceOnly(stressMPa, figures.bondShearMPa);
}
