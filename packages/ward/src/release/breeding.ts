/** Months in which young may depend on a patient: births as published, and the weeks of milk or care after them. */

export interface Breeding {
  readonly species: string;
  /** Months in which a female may have young that depend on her, 1 to 12. */
  readonly months: readonly number[];
  readonly says: string;
  readonly source: string;
}

const months = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i);

const BREEDING: readonly Breeding[] = [
  {
    species: 'hedgehog',
    months: months(5, 10),
    says: 'Births from May to September, now and then April or October; milk for about six weeks, the sow alone.',
    source: 'lay page on hedgehog life; Burroughes et al. 2021',
  },
  {
    species: 'red squirrel',
    months: months(2, 11),
    says: 'Young from mid-February to mid-November, suckled for 50 to 70 days.',
    source: 'page on squirrel breeding biology',
  },
  {
    species: 'fox',
    months: months(3, 6),
    says: 'Cubs at the end of March, after 53 days.',
    source: 'Hand 2021, Veterinary Ireland Journal',
  },
  {
    species: 'barn owl',
    months: months(2, 8),
    says: 'Laying usually in April, from February on; both parents are needed.',
    source: 'page of a barn owl project',
  },
];

/** The season of young of a species in that month (1 to 12); null outside of it or where none is known. */
export function breedingIn(species: string, month: number): Breeding | null {
  return BREEDING.find((b) => b.species === species.toLowerCase() && b.months.includes(month)) ?? null;
}
