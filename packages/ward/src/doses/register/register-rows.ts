/** The register as it is read: a page for each drug, strength and form, its entries in the order they were written, with the balance after each. */
import { dayAt } from '../../moments/moment.ts';
import { plain } from '../figure-words.ts';
import type { RegisterEntry, RegisterKind, SignedEntry } from './register-entry.ts';

export interface RegisterRow {
  readonly entry: RegisterEntry;
  readonly by: string;
  readonly writtenAt: string;
  readonly inMl: number | null;
  readonly outMl: number | null;
  readonly balanceMl: number;
  /** What an inspector would ask about; empty where there is nothing. */
  readonly remarks: readonly string[];
}

export interface RegisterPage {
  readonly drug: string;
  readonly perMl: number;
  readonly unit: 'mg' | 'U';
  readonly form: string;
  readonly balanceMl: number;
  readonly rows: readonly RegisterRow[];
}

/** Every page, in the order they were begun. `minutesEastOfUtc` tells days apart. */
export function registerRows(entries: readonly SignedEntry[], minutesEastOfUtc: number): RegisterPage[] {
  const pages = new Map<string, RegisterPage>();
  for (const signed of entries) {
    const { drug, perMl, unit, form } = signed.entry;
    const key = `${drug}\n${perMl} ${unit}\n${form}`;
    const page = pages.get(key) ?? { drug, perMl, unit, form, balanceMl: 0, rows: [] };
    const row = rowOf(signed, page, minutesEastOfUtc);
    pages.set(key, { ...page, balanceMl: row.balanceMl, rows: [...page.rows, row] });
  }
  return [...pages.values()];
}

function rowOf({ entry, by, at }: SignedEntry, page: RegisterPage, minutesEastOfUtc: number): RegisterRow {
  const change = rounded(changeOf(entry));
  const balanceMl = rounded(page.balanceMl + change);
  return {
    entry,
    by,
    writtenAt: at,
    inMl: change > 0 ? change : null,
    outMl: change < 0 ? -change : null,
    balanceMl,
    remarks: remarksOf(entry, { at, by, balanceMl, page, minutesEastOfUtc }),
  };
}

const SIGN: Readonly<Record<RegisterKind, number>> = {
  received: 1,
  given: -1,
  wasted: -1,
  destroyed: -1,
  counted: 0,
  corrected: 1,
};
const changeOf = ({ kind, ml }: RegisterEntry): number => SIGN[kind] * ml;

/** Free of the dust of binary fractions. */
const rounded = (ml: number): number => Number(ml.toFixed(6));

interface About {
  readonly at: string;
  readonly by: string;
  readonly balanceMl: number;
  readonly page: RegisterPage;
  readonly minutesEastOfUtc: number;
}

function remarksOf(entry: RegisterEntry, { at, by, balanceMl, page, minutesEastOfUtc }: About): string[] {
  const daysLater = dayAt(at, minutesEastOfUtc) - dayAt(entry.at, minutesEastOfUtc);
  const difference = rounded(entry.ml - balanceMl);
  const isAbout = (row: RegisterRow) => row.entry.entryId === entry.corrects;
  return [
    daysLater > 1 && `written ${daysLater} days later; the same day or the next is asked for`,
    balanceMl < 0 && `the balance is below nought by ${plain(-balanceMl)} ml`,
    entry.kind === 'counted' &&
      difference !== 0 &&
      `the count is ${plain(Math.abs(difference))} ml ${difference > 0 ? 'more' : 'less'} than the balance`,
    entry.kind === 'corrected' && !page.rows.some(isAbout) && 'the entry it corrects is not on this page',
    entry.kind !== 'received' && entry.witness === null && 'no witness',
    entry.witness !== null && entry.witness.toLowerCase() === by.toLowerCase() && 'the witness is the signer',
  ].filter((remark) => typeof remark === 'string');
}
