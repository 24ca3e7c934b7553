/** The ways to weaken a frame step by step: draw the IM pin, cut one column, remove every other pin. */
import { fragmentAt, fragmentsOf } from '@bonewright/bone';
import type { Case, Construct } from '../model/case-file.ts';
import { columnsOf } from '../model/figures.ts';

interface Step {
  readonly name: string;
  readonly construct: Construct;
}

/** The whole frame, then each step on top of those before it, as far as the construct has what it takes away. */
export function stagesOf(patientCase: Case, construct: Construct): Step[] {
  const stages: Step[] = [{ name: 'as it stands', construct }];
  for (const { name, without } of STEPS) {
    const before = stages.at(-1)!.construct;
    const after = without(patientCase, before);
    if (after) stages.push({ name, construct: after });
  }
  return stages;
}

const STEPS: readonly {
  readonly name: string;
  /** Null where there is nothing to take away. */
  readonly without: (patientCase: Case, construct: Construct) => Construct | null;
}[] = [
  { name: 'IM pin drawn', without: (_, construct) => (construct.im ? { ...construct, im: null } : null) },
  { name: 'far column cut', without: (_, construct) => withoutFarColumn(construct) },
  { name: 'every other pin removed', without: withoutAlternatePins },
];

function withoutFarColumn(construct: Construct): Construct | null {
  const columns = columnsOf(construct);
  const near = columns.filter((c) => c.side !== 'far');
  return near.length === columns.length || near.length === 0 ? null : { ...construct, column: near };
}

/** In each fragment of more than one pin the pins nearest the fracture and every second one from there stay. */
function withoutAlternatePins({ bone, fracture }: Case, construct: Construct): Construct | null {
  const fragments = fragmentsOf(bone.lengthMm, fracture);
  const kept = (['proximal', 'distal'] as const).flatMap((name) => {
    const pins = construct.pins
      .map((pin, i) => ({ i, away: Math.abs(pin.sMm - fragments.middleMm), at: fragmentAt(fragments, pin.sMm) }))
      .filter(({ at }) => at === name)
      .toSorted((a, b) => a.away - b.away);
    return pins.filter((_, rank) => rank % 2 === 0).map(({ i }) => i);
  });
  if (kept.length === construct.pins.length) return null;
  return { ...construct, pins: construct.pins.filter((_, i) => kept.includes(i)) };
}
