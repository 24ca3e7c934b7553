/** The published doses of a drug, side by side for one patient, and the ranges that a typed dose is held against. */
import { type DoseFigure, type DoseRoute, doseFigures } from '@bonewright/evidence';
import { animalsOf, type Relation, relationTo } from './patient-kind.ts';

export interface Shown {
  readonly figure: DoseFigure;
  readonly relation: Relation;
}

const ORDER: readonly Relation[] = ['own', 'general', 'other'];

/** Every figure of the drug, those of the patient's own species first; other kinds of animal only where its kind has none. */
export function publishedFor(drug: string, species: string): Shown[] {
  const all = doseFigures
    .filter((figure) => figure.drug === drug)
    .map((figure) => ({ figure, relation: relationTo(figure, species) }));
  const near = all.filter(({ figure }) => figure.animals === animalsOf(species));
  const shown = near.length > 0 ? near : all;
  return shown.toSorted((a, b) => ORDER.indexOf(a.relation) - ORDER.indexOf(b.relation));
}

export interface Counted {
  /** Of the closest relation there is; recalled, older, withdrawn and doubtful figures are not among them. */
  readonly figures: readonly DoseFigure[];
  /** Whether they are of the patient's own species or kind. */
  readonly areOwn: boolean;
  /** Whether any of them was given by this route. */
  readonly isByRoute: boolean;
}

/** What a dose for this patient is held against. */
export function countedFor(drug: string, species: string, route: DoseRoute): Counted {
  const usable = publishedFor(drug, species).filter(
    ({ figure }) => figure.standing === 'current' && figure.status !== 'memory',
  );
  const own = usable.filter(({ relation }) => relation !== 'other');
  const areOwn = own.length > 0;
  const figures = (areOwn ? own : usable).map(({ figure }) => figure);
  const byRoute = figures.filter(({ routes }) => routes.length === 0 || routes.includes(route));
  return { figures: byRoute.length > 0 ? byRoute : figures, areOwn, isByRoute: byRoute.length > 0 };
}

const ABOUT = 1e-9;

/** Within one of the ranges, not merely between the lowest and the highest. */
export const isWithin = (perKg: number, figures: readonly DoseFigure[]): boolean =>
  figures.some(({ low, high }) => perKg >= low * (1 - ABOUT) && perKg <= high * (1 + ABOUT));

/** Whether the dose is that many times a figure of the list, or that small a part of one. */
export const isTimesOff = (perKg: number, figures: readonly DoseFigure[], times: number): boolean =>
  figures.some(({ low, high }) => perKg >= low * times * (1 - ABOUT) || perKg * times <= high * (1 + ABOUT));

export const highestOf = (figures: readonly DoseFigure[]): number => Math.max(...figures.map(({ high }) => high));
