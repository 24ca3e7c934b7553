/** A dose half typed: every field as text, and what still lacks before it is a line. */
import type { Patient } from '@bonewright/casebook';
import { DOSE_ROUTES, DOSE_USES, syringes } from '@bonewright/evidence';
import { DOSE_UNITS, type DoseLine, doseLineSchema, STRENGTH_UNITS } from '@bonewright/ward';
import { readNumber } from '../form/read-number.ts';

export interface DoseDraft {
  readonly drug: string;
  readonly use: string;
  readonly route: string;
  readonly site: string;
  readonly figureId: string;
  readonly dose: string;
  readonly doseUnit: string;
  readonly strength: string;
  readonly strengthUnit: string;
  /** Empty where it is drawn as it comes. */
  readonly parts: string;
  readonly diluent: string;
  readonly syringe: string;
  readonly secondPerson: string;
  /** By the remark's code. */
  readonly reasons: Readonly<Record<string, string>>;
}

const EMPTY: DoseDraft = {
  drug: '',
  use: '',
  route: '',
  site: '',
  figureId: '',
  dose: '',
  doseUnit: DOSE_UNITS[0],
  strength: '',
  strengthUnit: STRENGTH_UNITS[0],
  parts: '',
  diluent: '',
  syringe: '',
  secondPerson: '',
  reasons: {},
};

/** What was kept, as far as it is a draft; nothing is refused. */
export function readDoseDraft(kept: unknown): DoseDraft {
  if (typeof kept !== 'object' || kept === null) return EMPTY;
  const texts = Object.entries(kept).filter(([key, text]) => key in EMPTY && typeof text === 'string');
  const reasons = 'reasons' in kept && typeof kept.reasons === 'object' && kept.reasons !== null ? kept.reasons : {};
  const said = Object.entries(reasons).filter(([, reason]) => typeof reason === 'string');
  return { ...EMPTY, ...Object.fromEntries(texts), reasons: Object.fromEntries(said) };
}

export type LineOf =
  | { readonly line: DoseLine; readonly lacks: null }
  | { readonly line: null; readonly lacks: string };

type Weighed = Pick<Patient, 'species' | 'massG' | 'weighedAt'>;

/** The line, or the first thing that is missing, in words. */
export function lineOf(draft: DoseDraft, { species, massG, weighedAt }: Weighed): LineOf {
  const lacks = missing(draft, massG);
  if (lacks !== null) return { line: null, lacks };
  const { drug, use, route, site, figureId, doseUnit, strengthUnit, diluent } = draft;
  const syringe = syringes.find(({ id }) => id === draft.syringe);
  const read = doseLineSchema.safeParse({
    drug: drug.trim().toLowerCase(),
    use,
    route,
    site: site.trim(),
    species,
    massG,
    weighedAt,
    dose: { value: readNumber(draft.dose), unit: doseUnit },
    figureId: figureId || null,
    strength: { value: readNumber(draft.strength), unit: strengthUnit },
    dilution: draft.parts.trim() === '' ? null : { parts: readNumber(draft.parts), diluent: diluent.trim() },
    syringe: syringe && { capacityMl: syringe.capacityMl, markMl: syringe.markMl },
  });
  if (read.success) return { line: read.data, lacks: null };
  const { path = [], message = '' } = read.error.issues[0] ?? {};
  return { line: null, lacks: `This cannot be a dose (${path.join(' ')}: ${message}).` };
}

function missing(draft: DoseDraft, massG: number | null): string | null {
  if (massG === null) return 'The patient has not been weighed. Weigh it at Admission first.';
  if (draft.drug.trim() === '') return 'Say which drug.';
  if (!DOSE_USES.some((use) => use === draft.use)) return 'Say what it is for.';
  if (!DOSE_ROUTES.some((route) => route === draft.route)) return 'Say by which route.';
  if (readNumber(draft.dose) === null) return 'Type the dose, or take a published figure.';
  if (readNumber(draft.strength) === null) return 'Type the strength as the vial has it.';
  if (!syringes.some(({ id }) => id === draft.syringe)) return 'Say which syringe.';
  if (draft.parts.trim() !== '' && draft.diluent.trim() === '') return 'Say what it is diluted with.';
  return null;
}
