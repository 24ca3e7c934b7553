/** What becomes of the margins if something goes wrong: each a changed case or construct, solved with its spread. */
import { value } from '@bonewright/evidence';
import { pinWords } from '../checks/words.ts';
import type { Case, Construct } from '../model/case-file.ts';
import { found } from '../model/figures.ts';
import type { Verdict } from '../model/plan.ts';
import { marginVerdict } from '../plan-of.ts';
import type { Evaluators } from '../search/evaluators.ts';
import { leastMargin, worstMargin } from '../search/worth.ts';
import { nextSmaller } from './drawer-steps.ts';
import { withAllPins } from './edits.ts';

export interface WhatIf {
  /** `P3 breaks`, `20 % heavier, 372 g`. */
  readonly words: string;
  /** The worst margin then: 5 of 100 trials fall below it. 0 where a fragment is held by nothing. */
  readonly worstP05: number;
  readonly verdict: Verdict;
}

/** Which pin the first two are about, from 0; without it the pin whose loss costs most. */
export interface Asked {
  readonly pin?: number;
}

interface Change {
  readonly words: string;
  readonly patientCase: Case;
  readonly construct: Construct;
}

/** The what-ifs of a construct. Broken: the pin is gone, its hole with it. Loose: it holds in the near wall only. */
export function whatIfsWith(
  evaluators: Evaluators,
  patientCase: Case,
  construct: Construct,
  asked: Asked = {},
): WhatIf[] {
  const pin = asked.pin ?? costliestPin(evaluators, patientCase, construct);
  const changes = [
    broken(patientCase, construct, pin),
    loose(patientCase, construct, pin),
    heavier(patientCase, construct),
    imDrawn(patientCase, construct),
    noContact(patientCase, construct),
    thinner(patientCase, construct),
  ];
  return changes.filter((change) => change !== null).map((change) => outcome(evaluators, change));
}

function outcome(evaluators: Evaluators, { words, patientCase, construct }: Change): WhatIf {
  const { samples, seed } = patientCase;
  if (!holdsBoth(patientCase, construct)) return { words, worstP05: 0, verdict: 'stop' };
  const worst = leastMargin(evaluators.full(patientCase, construct, { samples, seed }));
  return { words, worstP05: worst.p05, verdict: marginVerdict(worst) };
}

const without = (construct: Construct, pin: number): Construct => ({
  ...construct,
  pins: construct.pins.filter((_, i) => i !== pin),
});

/** A pin, or the IM pin, on each side of the fracture. */
function holdsBoth({ fracture }: Case, { pins, im }: Construct): boolean {
  const middle = (fracture.fromMm + fracture.toMm) / 2;
  return pins.length > 0 && (Boolean(im) || (pins.some((p) => p.sMm < middle) && pins.some((p) => p.sMm > middle)));
}

function costliestPin({ nominal }: Evaluators, patientCase: Case, construct: Construct): number {
  const left = construct.pins.map((_, i) => {
    const rest = without(construct, i);
    return holdsBoth(patientCase, rest) ? worstMargin(nominal(patientCase, rest)) : 0;
  });
  return left.indexOf(Math.min(...left));
}

const broken = (patientCase: Case, construct: Construct, pin: number): Change => ({
  words: `P${pin + 1} breaks`,
  patientCase,
  construct: without(construct, pin),
});

const loose = (patientCase: Case, construct: Construct, pin: number): Change => ({
  words: `P${pin + 1} comes loose in the far wall`,
  patientCase,
  construct: { ...construct, pins: construct.pins.map((p, i) => (i === pin ? { ...p, cortices: 1 as const } : p)) },
});

/** The user's own loads grow with the patient. */
function heavier(patientCase: Case, construct: Construct): Change {
  const more = value('what-if.heavier');
  const massG = patientCase.patient.massG * (1 + more / 100);
  const grown = (load: number | undefined) => (load === undefined ? undefined : load * (1 + more / 100));
  const { loads } = patientCase;
  const typed = loads && {
    ...loads,
    ...defined({
      axialN: grown(loads.axialN),
      bendingNmm: grown(loads.bendingNmm),
      torsionNmm: grown(loads.torsionNmm),
    }),
  };
  return {
    words: `${more} % heavier, ${massG.toFixed(0)} g`,
    patientCase: { ...patientCase, patient: { ...patientCase.patient, massG }, ...(typed ? { loads: typed } : {}) },
    construct,
  };
}

const defined = (figures: Readonly<Record<string, number | undefined>>): Record<string, number> =>
  Object.fromEntries(Object.entries(figures).filter((pair): pair is [string, number] => pair[1] !== undefined));

/** As if nothing had healed by then: the callus is not counted on. */
function imDrawn(patientCase: Case, construct: Construct): Change | null {
  if (!construct.im) return null;
  const week = value('what-if.im-drawn');
  return {
    words: `IM pin drawn at week ${week}, callus not counted`,
    patientCase,
    construct: { ...construct, im: null },
  };
}

/** The whole broken stretch carries nothing. */
function noContact(patientCase: Case, construct: Construct): Change | null {
  const { fracture } = patientCase;
  if (fracture.comminuted || fracture.toMm <= fracture.fromMm) return null;
  return {
    words: 'No contact at the fracture',
    patientCase: { ...patientCase, fracture: { ...fracture, comminuted: true } },
    construct,
  };
}

/** All pins a size down. */
function thinner(patientCase: Case, construct: Construct): Change | null {
  const thickest = construct.pins
    .map(({ drawerId }) => found(patientCase.drawer.pins, drawerId))
    .reduce((a, b) => (b.diameterMm > a.diameterMm ? b : a));
  const next = nextSmaller(patientCase.drawer.pins, thickest);
  if (!next) return null;
  return {
    words: `Next smaller, ${pinWords(next)}`,
    patientCase,
    construct: withAllPins(construct, next.id),
  };
}
