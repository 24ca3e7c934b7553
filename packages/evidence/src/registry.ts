/** All entries of all sets by id. A set is one file in `sets/`; add it to `SETS` here. */
import type { Curve } from './curve.ts';
import type { Entry } from './entry.ts';
import { alignment } from './sets/alignment.ts';
import { bone } from './sets/bone.ts';
import { charting } from './sets/charting.ts';
import { column } from './sets/column.ts';
import { masses } from './sets/doses/masses.ts';
import { doseRules } from './sets/doses/rules.ts';
import { energy } from './sets/energy.ts';
import { fluids } from './sets/fluids.ts';
import { healing } from './sets/healing.ts';
import { holeCurves } from './sets/hole-curves.ts';
import { imaging } from './sets/imaging.ts';
import { interfaces } from './sets/interface.ts';
import { loads } from './sets/loads.ts';
import { needle } from './sets/needle.ts';
import { release } from './sets/release.ts';
import { rules } from './sets/rules.ts';
import { steel } from './sets/steel.ts';
import { theatre } from './sets/theatre.ts';
import { vitals } from './sets/vitals.ts';

const SETS: readonly (readonly Entry[])[] = [
  imaging,
  rules,
  steel,
  needle,
  column,
  bone,
  interfaces,
  loads,
  healing,
  alignment,
  theatre,
  fluids,
  energy,
  doseRules,
  masses,
  release,
  vitals,
  charting,
];

/** Every entry, in the order of the sets. */
export const entries: readonly Entry[] = SETS.flat();

const byId = new Map(entries.map((e) => [e.id, e]));

/** The entry of that id; an unknown id is a fault of ours. */
export function entry(id: string): Entry {
  const found = byId.get(id);
  if (!found) throw new Error(`no evidence entry "${id}"`);
  return found;
}

/** The default value of that entry, in its own unit. */
export const value = (id: string): number => entry(id).value;

/** The published curve of that id; an unknown id is a fault of ours. */
export function curve(id: string): Curve {
  const found = holeCurves.find((c) => c.id === id);
  if (!found) throw new Error(`no evidence curve "${id}"`);
  return found;
}
