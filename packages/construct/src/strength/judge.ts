/** How much a place is asked and how much it bears, both in MPa: their ratio is its margin. */
import type { Figures } from '../model/figures.ts';
import type { Place } from './places.ts';
import type { Sections } from './sections.ts';
import { axialOf, columnStress, type EndForces, holeStress, rodStress, shearOf } from './stress.ts';

/** Largest stress at a place under the end forces of its member; for what slides or presses, the shear or pressure. */
export function stressAt(place: Place, forces: EndForces, sections: Sections): number {
  switch (place.kind) {
    case 'pin': {
      const { shaft, core } = sections.pins[place.pin]!;
      return rodStress(forces, place.inBone ? core : shaft);
    }
    case 'im':
      return rodStress(forces, sections.im!);
    case 'column': {
      const stops = sections.columns[place.column]!;
      return columnStress(forces, stops[place.through === 'im' ? stops.length - 1 : place.through]!);
    }
    case 'hole':
      return holeStress(forces, sections.pins[place.pin]!.hole);
    case 'bearing':
      return shearOf(forces) / sections.pins[place.pin]!.pressedMm2[place.side];
    case 'slide':
      return axialOf(forces) / sections.pins[place.pin]!.grippedMm2[place.column]!;
  }
}

/** Stress that a place bears: once at the misstep, or again and again at every step, whichever is the less. */
export function strengthAt(place: Place, figures: Figures): number {
  const { boneYoungMPa, boneYieldStrain, demand } = figures;
  const both = (once: number, again: number) => Math.min(once, again / demand.repeatedShare);
  switch (place.kind) {
    case 'pin': {
      const { yieldMPa, fatigueMPa } = figures.pins[place.pin]!;
      return both(yieldMPa, fatigueMPa);
    }
    case 'im': {
      const { yieldMPa, fatigueMPa, bentYieldMPa, bentFatigueMPa } = figures.im!;
      return place.bent ? both(bentYieldMPa, bentFatigueMPa) : both(yieldMPa, fatigueMPa);
    }
    case 'column': {
      const { yieldMPa, fatigueMPa } = figures.columns[place.column]!;
      return both(yieldMPa, fatigueMPa);
    }
    case 'hole':
    case 'bearing':
      return boneYoungMPa * boneYieldStrain;
    case 'slide':
      return figures.bondShearMPa;
  }
}

/** What every place bears at those figures, in the order of the places. */
export const strengthsOf = (places: readonly Place[], figures: Figures): number[] =>
  places.map((place) => strengthAt(place, figures));
