/** Every construct worth a thought, checked without a solver: what passes, what was refused and why. */
import type { FragmentName, Profile } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import { checkContext, runFrameChecks } from '../checks/index.ts';
import type { Case, Construct } from '../model/case-file.ts';
import type { Check } from '../model/plan.ts';
import { frameFacts } from '../to-frame/masses.ts';
import { type Counts, countChoices, type ImChoice, imChoices, type PinChoice, pinChoices } from './choices.ts';
import { estimateMargin } from './estimate.ts';
import { layoutsOf, spacingOf } from './layouts.ts';
import { columnAt, pinAt, type Site, type SiteBook } from './sites.ts';
import { watchesIn, worth } from './worth.ts';

export interface Candidate {
  readonly construct: Construct;
  readonly massG: number;
  /** What it is worth by the guess. */
  readonly promise: number;
}

export interface Field {
  /** Constructs looked at, refused ones included. */
  readonly count: number;
  readonly passed: readonly Candidate[];
  /** How many constructs each check stopped. */
  readonly refused: ReadonlyMap<string, number>;
}

/** What a walk over the choices needs at each step. */
export interface Ground {
  readonly patientCase: Case;
  readonly profile: Profile;
  readonly aboutDeg: number;
  readonly sites: SiteBook;
}

/** The thinnest and the thickest column stand for all: those between are tried when the best are bettered. */
export function candidatesOf(ground: Ground): Field {
  const columns = ground.patientCase.drawer.columns.toSorted((a, b) => a.diameterMm - b.diameterMm);
  const ids = columns.map(({ id }) => id);
  const ends = walked(ground, [...new Set([ids[0]!, ids[ids.length - 1]!])]);
  return ends.passed.length > 0 || ids.length <= 2 ? ends : walked(ground, ids);
}

function walked(ground: Ground, columnIds: readonly string[]): Field {
  const refused = new Map<string, number>();
  const passed: Candidate[] = [];
  let count = 0;
  const refuse = (id: string) => refused.set(id, (refused.get(id) ?? 0) + 1);
  for (const found of constructs(ground, columnIds, refuse)) {
    count += 1;
    if (found === 'no room') continue;
    const { candidate, stops } = judge(ground.patientCase, found.construct, found.watches);
    if (candidate) passed.push(candidate);
    for (const id of stops) refuse(id);
  }
  return { count, passed, refused };
}

interface Row {
  readonly pins: Construct['pins'];
  /** What the pins ask care for in their places. */
  readonly watches: ReadonlySet<string>;
}

type Found = { readonly construct: Construct; readonly watches: ReadonlySet<string> } | 'no room';

/** Constructs, and `no room` for each choice whose pins find no places. */
function* constructs(ground: Ground, columnIds: readonly string[], refuse: (id: string) => void): Generator<Found> {
  for (const im of imChoices(ground.patientCase, ground.profile)) {
    for (const choice of pinChoices(ground.patientCase)) {
      for (const rows of rowsOf(ground, im, choice)) {
        if (rows.length === 0) {
          refuse(whyNoRoom(ground, im, choice));
          yield 'no room';
        }
        for (const { pins, watches } of rows) {
          for (const id of columnIds) yield { construct: { im, pins, column: columnAt(id), grip: 'usual' }, watches };
        }
      }
    }
  }
}

/** As many pins in one fragment as in the other; one more in one of them only where the other has no room for it. */
function rowsOf(ground: Ground, im: ImChoice, choice: PinChoice): Row[][] {
  const { alike, unlike } = countChoices();
  const rows = alike.map((counts) => rowsWith(ground, im, choice, counts));
  const isFull = (count: number) => alike.some(({ proximal }, i) => proximal === count && rows[i]!.length > 0);
  const rest = unlike.filter(({ proximal, distal }) => !isFull(Math.max(proximal, distal)));
  return [...rows, ...rest.map((counts) => rowsWith(ground, im, choice, counts)).filter((row) => row.length > 0)];
}

/** The pins of both fragments, calm places with calm and bold with bold. */
function rowsWith(ground: Ground, im: ImChoice, choice: PinChoice, counts: Counts): Row[] {
  const proximal = layoutsIn(ground, im, choice.proximalId, 'proximal', counts.proximal);
  const distal = layoutsIn(ground, im, choice.distalId, 'distal', counts.distal);
  if (proximal.length === 0 || distal.length === 0) return [];
  const pinsAt = (places: readonly Site[], id: string) => places.map(({ sMm }) => pinAt(id, sMm, ground.aboutDeg));
  return Array.from({ length: Math.max(proximal.length, distal.length) }, (_, i) => {
    const above = proximal[Math.min(i, proximal.length - 1)]!;
    const below = distal[Math.min(i, distal.length - 1)]!;
    return {
      pins: [...pinsAt(above, choice.proximalId), ...pinsAt(below, choice.distalId)],
      watches: new Set([...above, ...below].flatMap(({ watches }) => watches)),
    };
  });
}

function layoutsIn(ground: Ground, im: ImChoice, pinId: string, fragment: FragmentName, count: number): Site[][] {
  return layoutsOf(ground.sites(pinId, im).allowed[fragment], count, spacingOf(ground.patientCase, pinId));
}

/** The check that stops a pin at most places; where none does the pins are too close to each other. */
function whyNoRoom({ sites }: Ground, im: ImChoice, { proximalId, distalId }: PinChoice): string {
  return mostFrequent([proximalId, distalId].flatMap((id) => sites(id, im).stops)) ?? 'pin-spacing';
}

/** The id that stops most often. */
export function mostFrequent(stops: readonly Check[]): string | undefined {
  const counts = new Map<string, number>();
  for (const { id } of stops) counts.set(id, (counts.get(id) ?? 0) + 1);
  return [...counts].toSorted((a, b) => b[1] - a[1])[0]?.[0];
}

/** Places were chosen by the checks of a single pin: only the others are left to run. */
function judge(patientCase: Case, construct: Construct, inPlaces: ReadonlySet<string>) {
  const facts = frameFacts(patientCase, construct);
  const checks = runFrameChecks(checkContext(patientCase, construct, facts));
  const stops = new Set(checks.filter((check) => check.verdict === 'stop' || isBunched(check)).map(({ id }) => id));
  if (stops.size > 0) return { candidate: null, stops };
  const p05 = estimateMargin(facts) / value('plan.spread.usual');
  const promise = worth(p05, new Set([...inPlaces, ...watchesIn(checks)]).size, construct.pins.length);
  return { candidate: { construct, massG: facts.massG, promise }, stops };
}

/** Two pins side by side hold little more than one: a surgeon may place them so, the search does not offer it. */
const isBunched = ({ id, value: percent }: Check): boolean =>
  id.startsWith('spread-') && percent !== null && percent < value('plan.pin-spread.least');
