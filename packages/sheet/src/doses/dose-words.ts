/** One signed dose in words, the same on every paper. */
import { plain, publishedFor, type SignedDose, spelled, unitWords } from '@bonewright/ward';

export const drawWords = ({ drawnMl }: SignedDose): string => `${plain(drawnMl)} ml`;

export const drawSpelled = ({ drawnMl }: SignedDose): string => `${spelled(plain(drawnMl))} millilitres`;

/** `0.1 mg/kg for 820 g = 0.082 mg, from 1 mg/ml`. */
export function doseWords({ line, amount, unit }: SignedDose): string {
  const { dose, strength, massG } = line;
  return `${plain(dose.value)} ${unitWords(dose.unit)} for ${plain(massG)} g = ${plain(amount)} ${unit}, from a vial of ${plain(strength.value)} ${unitWords(strength.unit)}`;
}

/** The recipe, or that none is wanted. */
export function recipeWords({ line, recipe, unit }: SignedDose): string {
  if (!recipe || !line.dilution) return 'Undiluted.';
  return `Mix first: ${plain(recipe.drugMl)} ml of drug + ${plain(recipe.diluentMl)} ml of ${line.dilution.diluent} = ${plain(recipe.totalMl)} ml of ${plain(recipe.perMl)} ${unit}/ml (one part in ${line.dilution.parts}). Label it.`;
}

/** What the mark of the syringe makes of the dose. */
export function roundingWords({ line, exactMl, changePercent }: SignedDose): string {
  const syringe = `${plain(line.syringe.capacityMl)} ml syringe, marks of ${plain(line.syringe.markMl)} ml`;
  if (Math.abs(changePercent) < 0.05) return `${syringe}: falls on a mark.`;
  const change = `${plain(Math.abs(Number(changePercent.toFixed(1))))} % ${changePercent > 0 ? 'more' : 'less'}`;
  return `${syringe}: ${plain(exactMl)} ml rounded to the mark, ${change}.`;
}

export const routeWords = ({ line: { route, site } }: SignedDose): string => [route, site].filter(Boolean).join(', ');

/** Said on every paper elsewhere. */
const SAID_ELSEWHERE: ReadonlySet<string> = new Set(['rounding', 'dead-space']);

/** What was said of it when it was signed, with the vet's reasons. */
export const remarkWords = ({ remarks }: SignedDose): string[] =>
  remarks
    .filter(({ code }) => !SAID_ELSEWHERE.has(code))
    .map(({ words, reason }) => (reason === null ? words : `${words} Reason: ${reason}.`));

/** Whose figure it is, where it is not one of the patient's own species. */
export const borrowedWords = ({ remarks }: SignedDose): string =>
  remarks
    .filter(({ code }) => /species|general/.test(code))
    .map(({ words }) => words)
    .join(' ');

/** Figures that are no longer to be used: named, so that an older table is recognised. */
export function notThese({ line: { drug, species } }: SignedDose): string {
  const old = publishedFor(drug, species).filter(
    ({ figure }) => figure.standing === 'withdrawn' || figure.standing === 'older',
  );
  if (old.length === 0) return '';
  const words = old.map(({ figure: { low, high, studied, standing } }) => {
    const range = low === high ? plain(low) : `${plain(low)}-${plain(high)}`;
    return `${range} mg/kg (${standing}; ${studied.replace(', older table', '')})`;
  });
  return `Other tables still print ${words.join(', ')}: not the dose above.`;
}
