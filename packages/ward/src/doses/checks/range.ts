/** The dose against what was published: outside every range, far beyond, or off by a point or by a unit. */
import { type DoseFigure, type DoseRoute, doseFigure, value } from '@bonewright/evidence';
import { plain } from '../figure-words.ts';
import { relationTo } from '../patient-kind.ts';
import { type Counted, countedFor, highestOf, isTimesOff, isWithin } from '../published.ts';
import { asks, asksSecond, type Remark, rangeWords, says } from '../remark.ts';

export interface AskedDose {
  readonly drug: string;
  readonly species: string;
  readonly route: DoseRoute;
  readonly figureId: string | null;
  readonly perKg: number;
  readonly unit: 'mg' | 'U';
}

export function rangeRemarks(asked: AskedDose): Remark[] {
  const counted = countedFor(asked.drug, asked.species, asked.route);
  const picked = asked.figureId === null ? null : doseFigure(asked.figureId);
  return [
    ...againstPublished(asked, counted),
    ...slips(asked, picked ? [...counted.figures, picked] : counted.figures),
    ...(picked ? ofPicked(asked, picked) : []),
  ];
}

function againstPublished(asked: AskedDose, counted: Counted): Remark[] {
  const { figures } = counted;
  const { drug, species, perKg, unit } = asked;
  if (figures.length === 0)
    return [asks('no-figure', `No published dose of ${drug} was read for a ${species} or a like animal.`)];
  const remarks: Remark[] = [];
  if (!counted.areOwn) remarks.push(says('other-species', borrowedWords(species, figures)));
  if (!counted.isByRoute)
    remarks.push(
      asks('no-figure-by-route', `No published dose of ${drug} by ${asked.route} was read for a ${species}.`),
    );
  const ranges = [...new Set(figures.map(rangeWords))].join(', ');
  const per = `${unit}/kg`;
  if (!isWithin(perKg, figures))
    remarks.push(asks('outside', `${plain(perKg)} ${per} lies outside every published range (${ranges} ${per}).`));
  if (perKg > highestOf(figures) * value('dose.second-person'))
    remarks.push(
      asksSecond(
        'beyond-twice',
        `${plain(perKg)} ${per} is more than twice the highest published figure (${highestOf(figures)} ${per}).`,
      ),
    );
  return remarks;
}

const borrowedWords = (species: string, figures: readonly DoseFigure[]): string =>
  `No dose for a ${species}: the published figures are from ${[...new Set(figures.map(({ studied }) => studied))].join('; ')}.`;

function slips({ perKg, unit, drug }: AskedDose, figures: readonly DoseFigure[]): Remark[] {
  if (isTimesOff(perKg, figures, value('dose.unit-slip')))
    return [
      asks(
        'micro-milli',
        `${plain(perKg)} ${unit}/kg is a hundred times or more off a published figure of ${drug}. Micrograms or milligrams?`,
      ),
    ];
  if (isTimesOff(perKg, figures, value('dose.slip')))
    return [
      asks(
        'tenfold',
        `${plain(perKg)} ${unit}/kg is ten times or more off a published figure of ${drug}. Look at the point.`,
      ),
    ];
  return [];
}

function ofPicked({ species, drug }: AskedDose, figure: DoseFigure): Remark[] {
  if (figure.drug !== drug)
    return [asks('figure-of-other-drug', `The figure that was picked is one for ${figure.drug}, not for ${drug}.`)];
  const remarks: Remark[] = [];
  const relation = relationTo(figure, species);
  if (relation === 'other')
    remarks.push(says('picked-other-species', `Taken from ${figure.studied}; this is a ${species}.`));
  if (relation === 'general')
    remarks.push(says('picked-general', `Taken from ${figure.studied}, not from a ${species}.`));
  if (figure.status === 'memory')
    remarks.push(asks('recalled', 'The figure is unverified, from memory: look in its source first.'));
  if (figure.standing !== 'current')
    remarks.push(asks(`standing-${figure.standing.replace(' ', '-')}`, STANDING_WORDS[figure.standing]));
  if (figure.conflicts) remarks.push(says('conflict', figure.conflicts.why));
  return remarks;
}

const STANDING_WORDS: Readonly<Record<Exclude<DoseFigure['standing'], 'current'>, string>> = {
  older: 'The figure is an older one that newer sources do not repeat.',
  withdrawn: 'The figure was withdrawn.',
  suspect: 'The figure as printed is doubtful: look in its primary source.',
  'no effect': 'At this figure no effect, or a disadvantage, was reported.',
  toxic: 'At this figure animals were poisoned.',
};
