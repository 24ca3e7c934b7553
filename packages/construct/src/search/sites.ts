/** Where a pin of one kind may go along the bone: every half millimetre, judged by the checks of a single pin. */
import type { FragmentName } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import { imRoom } from '../checks/im-room.ts';
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

/** All pins go in in one direction about the bone. What an IM pin adds to a pin's checks is only room beside it. */
export function siteBook(patientCase: Case, aboutDeg: number): SiteBook {
  const bare = remembered((pinId) => {
    const context = rowOf(patientCase, pinAt(pinId, 0, aboutDeg), null);
    return { context, checks: runPinChecks(context) };
  });
  const beside = remembered((pinId, im) => {
    const context = rowOf(patientCase, pinAt(pinId, 0, aboutDeg), im);
    return sorted(context, [...bare(pinId, null).checks, ...imRoom(context)]);
  });
  const without = remembered((pinId) => sorted(bare(pinId, null).context, bare(pinId, null).checks));
  return (pinId, im) => (im ? beside(pinId, im) : without(pinId, null));
}

function remembered<T>(find: (pinId: string, im: ImChoice) => T): (pinId: string, im: ImChoice) => T {
  const known = new Map<string, T>();
  return (pinId, im) => {
    const key = JSON.stringify([pinId, im?.drawerId]);
    const found = known.get(key) ?? find(pinId, im);
    known.set(key, found);
    return found;
  };
}

export const pinAt = (drawerId: string, sMm: number, aboutDeg: number): Pin => ({
  drawerId,
  sMm,
  tiltDeg: 0,
  aboutDeg,
});

export const columnAt = (drawerId: string) => ({ drawerId, clearanceMm: value('rule.skin-clearance.target') });

/** The same pin at every place at once; no check of a single pin looks at its neighbours or at the column. */
function rowOf(patientCase: Case, pin: Pin, im: ImChoice): CheckContext {
  const { bone, drawer } = patientCase;
  const count = Math.floor(bone.lengthMm / GRID_MM);
  const pins = Array.from({ length: count }, (_, i): Pin => ({ ...pin, sMm: (i + 1) * GRID_MM }));
  const construct: Construct = { im, pins, column: columnAt(drawer.columns[0]!.id), grip: 'usual' };
  const figures = nominalFigures(patientCase, construct);
  const layout = layOut(patientCase, construct, figures);
  return checkContext(patientCase, construct, { figures, layout, columnMassesG: [], massG: 0 });
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
