/** The same drug again, or another of its family: too soon for every source, or for some. */
import { type DoseFigure, drugOf, value } from '@bonewright/evidence';
import { hoursBetween } from '../../moments/moment.ts';
import type { DoseLine } from '../dose-line.ts';
import { plain } from '../figure-words.ts';
import type { DoseContext, EarlierDose } from '../given.ts';
import { publishedFor } from '../published.ts';
import { asks, type Remark, says } from '../remark.ts';

export function earlierRemarks(line: DoseLine, context: DoseContext): Remark[] {
  return [...sameDrug(line, context), ...sameFamily(line, context)];
}

function sameDrug(line: DoseLine, { earlier, now }: DoseContext): Remark[] {
  const before = earlier.filter(({ drug }) => drug === line.drug);
  if (before.length === 0) return [];
  if (before.some(({ givenAt }) => givenAt === null))
    return [asks('signed-already', `${line.drug} is signed already and waits to be given.`)];
  const hours = Math.min(...hoursSince(before, now));
  return intervalRemarks(line, hours);
}

const hoursSince = (doses: readonly EarlierDose[], now: string): number[] =>
  doses.flatMap(({ givenAt }) => (givenAt === null ? [] : [hoursBetween(givenAt, now)]));

/** What the sources say about a further dose after so many hours. */
function intervalRemarks({ drug, species }: DoseLine, hours: number): Remark[] {
  const figures = publishedFor(drug, species)
    .map(({ figure }) => figure)
    .filter(({ status }) => status !== 'memory');
  const waits = figures.flatMap((figure) => waitsOf(figure));
  const ago = `${drug} was given ${plain(hours)} h ago`;
  if (waits.length === 0)
    return hours < value('dose.same-family') ? [says('given-before', `${ago}; no interval was read.`)] : [];
  const sources = waits.map(({ words }) => words).join('; ');
  if (waits.every((wait) => hours < wait.hours))
    return [asks('too-soon', `${ago}, sooner than every source: ${sources}.`)];
  if (waits.some((wait) => hours < wait.hours))
    return [says('may-add-up', `${ago}. Sources disagree, doses may add up: ${sources}.`)];
  return [];
}

function waitsOf({
  everyHours,
  lastsHours,
  studied,
}: DoseFigure): { readonly hours: number; readonly words: string }[] {
  if (everyHours) {
    const [from, to] = everyHours;
    return [{ hours: from, words: `every ${from === to ? from : `${from}-${to}`} h in ${studied}` }];
  }
  return lastsHours === undefined ? [] : [{ hours: lastsHours, words: `${lastsHours} h measured in ${studied}` }];
}

function sameFamily(line: DoseLine, { earlier, now }: DoseContext): Remark[] {
  const family = drugOf(line.drug)?.family;
  if (!family || !ADDING.has(family)) return [];
  const others = earlier.filter(
    ({ drug, givenAt }) =>
      drug !== line.drug &&
      drugOf(drug)?.family === family &&
      (givenAt === null || hoursBetween(givenAt, now) < value('dose.same-family')),
  );
  const names = [...new Set(others.map(({ drug }) => drug))];
  return names.length === 0
    ? []
    : [says('same-family', `Another ${family} within a day: ${names.join(', ')}. Effects add up.`)];
}

/** Local anaesthetics are added up by their ceilings instead. */
const ADDING: ReadonlySet<string> = new Set(['opioid', 'alpha-2 agonist', 'benzodiazepine', 'NSAID', 'dissociative']);
