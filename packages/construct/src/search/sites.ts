/** Where a pin of one kind may go along the bone: every half millimetre, judged by the checks of a single pin. */
import type { FragmentName } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import { type CheckContext, checkContext, runPinChecks } from '../checks/index.ts';
import type { Case, Construct } from '../model/case-file.ts';
import { nominalFigures } from '../model/figures.ts';
import type { Check } from '../model/plan.ts';
import { layOut } from '../to-frame/layout.ts';
import type { ImChoice } from './choices.ts';

export interface Site {
  readonly sMm: number;
  readonly boneWidthMm: number;
  /** Checks of a pin there that ask for care, by id. */
  readonly watches: readonly string[];
}

export interface Sites {
  /** In order along the bone; none that a check stops. */
  readonly allowed: Readonly<Record<FragmentName, readonly Site[]>>;
  /** Every stopping check of every place: what to say when nothing fits. */
  readonly stops: readonly Check[];
}

/** Places are offered to half a millimetre: a hand holds no finer. */
export const GRID_MM = 0.5;

type Pin = Construct['pins'][number];

/** Places by pin and IM pin, each found once. */
export type SiteBook = (pinId: string, im: ImChoice) => Sites;

/** All pins go in in one direction about the bone. */
export function siteBook(patientCase: Case, aboutDeg: number): SiteBook {
  const known = new Map<string, Sites>();
  const { id } = patientCase.drawer.columns[0]!;
  return (pinId, im) => {
    const key = JSON.stringify([pinId, im?.drawerId]);
    const sites = known.get(key) ?? sitesFor(patientCase, pinAt(pinId, 0, aboutDeg), { im, column: columnAt(id) });
    known.set(key, sites);
    return sites;
  };
}

export const pinAt = (drawerId: string, sMm: number, aboutDeg: number): Pin => ({
  drawerId,
  sMm,
  tiltDeg: 0,
  aboutDeg,
});

export const columnAt = (drawerId: string) => ({ drawerId, clearanceMm: value('rule.skin-clearance.target') });

/** `pin` says what goes in and how; its own place does not count. Nor does the column. */
function sitesFor(patientCase: Case, pin: Pin, frame: Pick<Construct, 'im' | 'column'>): Sites {
  const count = Math.floor(patientCase.bone.lengthMm / GRID_MM);
  const pins = Array.from({ length: count }, (_, i): Pin => ({ ...pin, sMm: (i + 1) * GRID_MM }));
  const construct: Construct = { ...frame, pins, grip: 'usual' };
  const figures = nominalFigures(patientCase, construct);
  const layout = layOut(patientCase, construct, figures);
  const context = checkContext(patientCase, construct, { figures, layout, columnMassesG: [], massG: 0 });
  return sorted(context, runPinChecks(context));
}

function sorted(context: CheckContext, checks: readonly Check[]): Sites {
  const watches = new Map<number, string[]>();
  for (const { id, pin, verdict } of checks) {
    if (verdict === 'watch' && pin) watches.set(pin, [...(watches.get(pin) ?? []), id]);
  }
  const stops = checks.filter(({ verdict }) => verdict === 'stop');
  const closed = new Set(stops.map(({ pin }) => pin));
  const of = (fragment: FragmentName): Site[] =>
    context.pins
      .filter((pin) => pin.fragment === fragment && !closed.has(pin.index + 1))
      .map(({ sMm, boneWidthMm, index }) => ({ sMm, boneWidthMm, watches: watches.get(index + 1) ?? [] }));
  return { allowed: { proximal: of('proximal'), distal: of('distal') }, stops };
}
