/** Whether the volume can be measured, fits the syringe, and is not too much for the place it goes to. */
import { type DoseRoute, type VolumeLimit, value, volumeLimits } from '@bonewright/evidence';
import type { DoseLine } from '../dose-line.ts';
import { plain } from '../figure-words.ts';
import { isBird, speciesName } from '../patient-kind.ts';
import { asks, type Remark, refuses, says } from '../remark.ts';
import { partsThatHelp, type Worked } from '../work-out.ts';

const GRAMS_A_KILOGRAM = 1000;
const ABOUT = 1e-9;

export function volumeRemarks(line: DoseLine, worked: Worked): Remark[] {
  return [...measuring(line, worked), ...placing(line, worked)];
}

function measuring({ dilution, syringe }: DoseLine, worked: Worked): Remark[] {
  const { exactMl, drawnMl, changePercent, deadSpacePercent } = worked;
  if (drawnMl === 0)
    return [
      refuses(
        'not-measurable',
        `${plain(exactMl)} ml is less than half a mark of this syringe. Dilute, or take a finer one.`,
      ),
    ];
  const remarks: Remark[] = [];
  if (exactMl < value('dose.least-volume') - ABOUT) {
    const parts = partsThatHelp(exactMl);
    const help = parts && !dilution ? ` One part in ${parts} would make ${plain(exactMl * parts)} ml.` : '';
    remarks.push(
      asks(
        'small-volume',
        `${plain(exactMl)} ml ${dilution ? 'even when diluted' : 'undiluted'} is under 0.05 ml.${help}`,
      ),
    );
  }
  if (drawnMl > syringe.capacityMl + ABOUT)
    remarks.push(
      asks('over-syringe', `${plain(drawnMl)} ml does not fit a syringe of ${plain(syringe.capacityMl)} ml.`),
    );
  if (Math.abs(changePercent) >= value('dose.rounding'))
    remarks.push(
      says(
        'rounding',
        `Rounding to the mark gives ${Math.abs(changePercent).toFixed(1)} % ${changePercent > 0 ? 'more' : 'less'}.`,
      ),
    );
  if (deadSpacePercent !== null && deadSpacePercent >= value('dose.rounding'))
    remarks.push(
      says(
        'dead-space',
        `A hub with a separate needle holds up to ${value('dose.dead-space')} ml (from memory), ${Math.round(deadSpacePercent)} % of this volume: never draw up diluent or flush through it.`,
      ),
    );
  return remarks;
}

/** The published limit for the route, of the patient's own species or the one it is borrowed from. Not for fluids. */
export function limitFor(
  species: string,
  route: DoseRoute,
): { readonly limit: VolumeLimit; readonly isBorrowed: boolean } | null {
  const of = (name: string) => volumeLimits.find((limit) => limit.species === name && limit.route === route);
  const own = of(speciesName(species));
  if (own) return { limit: own, isBorrowed: false };
  const borrowed = of(speciesName(species).includes('fox') ? 'dog' : 'rabbit');
  return borrowed ? { limit: borrowed, isBorrowed: true } : null;
}

function placing(line: DoseLine, { drawnMl }: Worked): Remark[] {
  const found = limitFor(line.species, line.route);
  if (!found) return [];
  const { limit, isBorrowed } = found;
  const perUnit = limit.unit === 'ml/kg' ? drawnMl / (line.massG / GRAMS_A_KILOGRAM) : drawnMl;
  const above = (most: number | null): boolean => most !== null && perUnit > most * (1 + ABOUT);
  if (!above(limit.recommended) && !above(limit.maximum)) return [];
  const whose = isBorrowed
    ? `borrowed from the ${limit.species}, an extrapolation${isBird(line.species) ? ' from mammal to bird' : ''}`
    : `of the ${limit.species}`;
  const words =
    `${plain(perUnit)} ${limit.unit} by ${line.route} is above the ${above(limit.maximum) ? 'largest' : 'recommended'} volume (${plain((above(limit.maximum) ? limit.maximum : limit.recommended) ?? 0)} ${limit.unit}, ${whose}). ${sitesWords(line.route)}`.trim();
  return [above(limit.maximum) ? asks('over-largest-volume', words) : says('over-volume', words)];
}

function sitesWords(route: DoseRoute): string {
  if (route === 'IM')
    return `Sites can be shared: no more than ${value('dose.im-sites')} a day in the published guide.`;
  return route === 'SC' ? `Sites can be shared: ${value('dose.sc-sites')} to 3 a day in the published guide.` : '';
}
