/** How many times a place bears what it is asked: once at the misstep, again and again at every step. */
import type { Figures } from '../model/figures.ts';
import type { Place } from './places.ts';
import type { Solution } from './solver.ts';
import { axialOf, columnStress, type EndForces, holeStress, rodStress, shearOf } from './stress.ts';

export interface Worth {
  /** Capacity over demand, the lesser of once and again and again. */
  readonly margin: number;
  /** Largest stress in MPa under the load; for what slides or presses, the shear or the pressure. */
  readonly stressMPa: number;
}

/** Judges one place under one load. `forces` are those of the place's member end. */
export function worthOf(place: Place, forces: EndForces, { figures, layout, sections }: Solution): Worth {
  switch (place.kind) {
    case 'pin': {
      const { shaft, core } = sections.pins[place.pin]!;
      const { yieldMPa, fatigueMPa } = figures.pins[place.pin]!;
      return both(rodStress(forces, place.inBone ? core : shaft), yieldMPa, fatigueMPa, figures);
    }
    case 'im': {
      const { yieldMPa, fatigueMPa, bentYieldMPa, bentFatigueMPa } = figures.im!;
      const stress = rodStress(forces, sections.im!);
      return place.bent
        ? both(stress, bentYieldMPa, bentFatigueMPa, figures)
        : both(stress, yieldMPa, fatigueMPa, figures);
    }
    case 'column': {
      const { yieldMPa, fatigueMPa } = figures.columns[place.column]!;
      const stops = sections.columns[place.column]!;
      const section = stops[place.through === 'im' ? stops.length - 1 : place.through]!;
      return both(columnStress(forces, section), yieldMPa, fatigueMPa, figures);
    }
    case 'hole':
      return onceOnly(holeStress(forces, sections.pins[place.pin]!.hole), boneYield(figures));
    case 'bearing': {
      const pressed = figures.pins[place.pin]!.coreMm * layout.pins[place.pin]![place.side].wallMm;
      return onceOnly(shearOf(forces) / pressed, boneYield(figures));
    }
    case 'slide': {
      const { embeddedMm } = layout.pins[place.pin]!.entries[place.column]!;
      const gripped = Math.PI * figures.pins[place.pin]!.diameterMm * embeddedMm;
      return onceOnly(axialOf(forces) / gripped, figures.bondShearMPa);
    }
  }
}

const boneYield = ({ boneYoungMPa, boneYieldStrain }: Figures): number => boneYoungMPa * boneYieldStrain;

const onceOnly = (stressMPa: number, bearsMPa: number): Worth => ({ margin: bearsMPa / stressMPa, stressMPa });

function both(stressMPa: number, yieldMPa: number, fatigueMPa: number, { demand }: Figures): Worth {
  return { margin: Math.min(yieldMPa, fatigueMPa / demand.repeatedShare) / stressMPa, stressMPa };
}
