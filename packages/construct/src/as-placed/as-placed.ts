/**
 * A plan as it stands half built: pins that are in stay as they are, the others are planned again round them. Every
 * remaining pin comes with its place, the place the plan had, and where a hand finds it.
 */
import { InputError } from '@bonewright/fault';
import { inMm } from '../checks/words.ts';
import type { Case, Construct } from '../model/case-file.ts';
import { checkConstruct } from '../model/case-rules.ts';
import type { Plan } from '../model/plan.ts';
import type { Evaluators } from '../search/evaluators.ts';
import { siteBook } from '../search/sites.ts';
import { worstMargin } from '../search/worth.ts';
import { withPinAt } from '../what-if/edits.ts';
import { inPlanNumbers } from './numbers.ts';
import { asItStands, checkTheatre, type InTheatre, isAsPlanned } from './placed.ts';
import { placesFor, rePlanned } from './re-plan.ts';

/** What is said of a pin that is not in yet. */
export interface Advice {
  /** As numbered in the plan. */
  readonly pin: number;
  readonly plannedMm: number;
  /** Where it should go now; null where its fragment has no other place for it. */
  readonly sMm: number | null;
  /** `P4 stays at 45.0 mm.`, or what it gains by moving. */
  readonly because: string;
}

export interface AsPlaced {
  /** Placed pins as they are, the others where they should go now; pins left out are not in it. */
  readonly construct: Construct;
  /** The plan's number of each of its pins. */
  readonly numbers: readonly number[];
  readonly remaining: readonly Advice[];
  /** Middle values; pins in its words are numbered as in the plan. */
  readonly plan: Plan;
}

/** The pins of a construct that still matter, each with its number in the plan. */
interface Numbered {
  readonly construct: Construct;
  readonly numbers: readonly number[];
}

/**
 * Re-plans what is left of a construct round what was placed. While every placed pin stands as planned the plan stands.
 * Throws InputError for a construct or a pin that cannot be, and where no pin is left.
 */
export function asPlacedWith(
  { nominal }: Pick<Evaluators, 'nominal'>,
  patientCase: Case,
  planned: Construct,
  theatre: InTheatre,
): AsPlaced {
  checkConstruct(patientCase, planned, 'construct');
  checkTheatre(patientCase, planned, theatre);
  const { start, homeless } = moved(patientCase, standing(planned, theatre, theatre.leftOut), theatre);
  const { construct, numbers } = homeless.length > 0 ? without(start, homeless) : start;
  const free = freeIn(numbers, theatre);
  const stays = isAsYetPlanned(planned, theatre);
  const tried = stays
    ? { construct, plan: nominal(patientCase, construct) }
    : rePlanned(nominal, patientCase, construct, { free, shunned: shunnedIn(numbers, theatre) });
  const kept = worstMargin(stays ? tried.plan : nominal(patientCase, construct));
  const remaining = free.map((index): Advice => {
    const pin = numbers[index]!;
    const { sMm } = tried.construct.pins[index]!;
    const plannedMm = planned.pins[pin - 1]!.sMm;
    const said = adviceWords(pin, plannedMm, sMm, [kept, worstMargin(tried.plan)]);
    return { pin, plannedMm, sMm, because: `${said}${neighbourWords(sMm, theatre)}` };
  });
  const lost = homeless.map((pin): Advice => {
    const plannedMm = planned.pins[pin - 1]!.sMm;
    return { pin, plannedMm, sMm: null, because: `P${pin} finds no other place in its fragment.` };
  });
  return {
    construct: tried.construct,
    numbers,
    remaining: [...remaining, ...lost].toSorted((a, b) => a.pin - b.pin),
    plan: inPlanNumbers(tried.plan, numbers),
  };
}

const isAsYetPlanned = ({ pins }: Construct, { placed, refused, leftOut }: InTheatre): boolean =>
  refused.length + leftOut.length === 0 && placed.every((each) => isAsPlanned(pins[each.pin - 1]!, each));

/** The plan with what is in as it stands, and without what was left out. */
function standing(planned: Construct, { placed }: InTheatre, leftOut: readonly number[]): Numbered {
  const pins = planned.pins.map((pin, i) => {
    const there = placed.find((each) => each.pin === i + 1);
    return there ? asItStands(pin, there) : pin;
  });
  return without({ construct: { ...planned, pins }, numbers: pins.map((_, i) => i + 1) }, leftOut);
}

function without({ construct, numbers }: Numbered, leftOut: readonly number[]): Numbered {
  const stays = (_: unknown, i: number) => !leftOut.includes(numbers[i]!);
  const pins = construct.pins.filter(stays);
  if (pins.length === 0) throw new InputError('no pin is left', 'leftOut', 'leave at least one in the plan');
  return { construct: { ...construct, pins }, numbers: numbers.filter(stays) };
}

const freeIn = (numbers: readonly number[], { placed }: InTheatre): number[] =>
  numbers.flatMap((pin, index) => (placed.some((each) => each.pin === pin) ? [] : [index]));

const shunnedIn = (numbers: readonly number[], { refused }: InTheatre) =>
  refused.map(({ pin, sMm }) => ({ index: numbers.indexOf(pin), sMm })).filter(({ index }) => index >= 0);

/** Pins that could not be put where they were tried start from the nearest other place, or are homeless. */
function moved(patientCase: Case, before: Numbered, theatre: InTheatre): { start: Numbered; homeless: number[] } {
  const { numbers } = before;
  const shunned = shunnedIn(numbers, theatre);
  let { construct } = before;
  const homeless: number[] = [];
  for (const index of freeIn(numbers, theatre)) {
    const tried = shunned.filter((hole) => hole.index === index).map(({ sMm }) => sMm);
    if (tried.length === 0) continue;
    const { sMm: now, aboutDeg } = construct.pins[index]!;
    const book = siteBook(patientCase, aboutDeg);
    const open = placesFor(patientCase, construct, index, { shunned }, () => book);
    const nearest = open.toSorted((a, b) => Math.abs(a - now) - Math.abs(b - now))[0];
    if (nearest === undefined) homeless.push(numbers[index]!);
    else construct = withPinAt(construct, index, nearest);
  }
  return { start: { construct, numbers }, homeless };
}

/** Where it comes to stand from the nearest pin that is in. */
function neighbourWords(sMm: number, { placed }: InTheatre): string {
  const apart = placed.map((each) => ({ pin: each.pin, mm: Math.abs(each.sMm - sMm) })).toSorted((a, b) => a.mm - b.mm);
  return apart[0] ? ` That is ${inMm(apart[0].mm)} from P${apart[0].pin} as it stands.` : '';
}

function adviceWords(pin: number, plannedMm: number, sMm: number, [before, after]: readonly [number, number]): string {
  if (sMm === plannedMm) return `P${pin} stays at ${inMm(sMm)}.`;
  const moves = `P${pin} moves from ${plannedMm.toFixed(1)} to ${inMm(sMm)}`;
  return after > before
    ? `${moves}: the worst margin is then ${after.toFixed(2)} instead of ${before.toFixed(2)}, at middle values.`
    : `${moves}.`;
}
