import { entries } from '@bonewright/evidence';
import { expect, test } from 'vitest';
import { assessConstruct } from '../assess.ts';
import { LOADS } from '../model/plan.ts';
import { straightBone } from '../straight-bone.ts';

const RABBIT = straightBone({
  lengthMm: 80,
  outerMm: 7,
  canalMm: 4.5,
  gapMm: 1,
  pinMm: 1.4,
  pins: [[12], [30], [50], [68]],
  columnMm: 9,
  columnMaterial: 'epoxy-putty',
  clearanceMm: 6,
  im: { diameterMm: 2, tiedIn: true },
  grip: 'usual',
});
const { loads: _, ...untyped } = RABBIT;
const known = new Set(entries.map((e) => e.id));

test('every check, margin and input leads to entries of the registry', () => {
  const plan = assessConstruct(untyped, untyped.construct!, { samples: 10, seed: 1 });
  const ids = [
    ...plan.checks.flatMap((check) => check.evidence),
    ...LOADS.flatMap((load) => plan.loads[load].evidence ?? []),
    ...plan.sensitivity.flatMap(({ evidence }) => evidence ?? []),
  ];
  expect(ids.filter((id) => !known.has(id))).toEqual([]);
  for (const load of LOADS) expect(plan.loads[load].evidence).toContain('column.epoxy-putty.young');
  expect(plan.loads.torsion.evidence).toContain('loads.torsion.share');
});

test('a load that was typed does not lean on the registry', () => {
  const plan = assessConstruct(RABBIT, RABBIT.construct!, { samples: 10, seed: 1 });
  expect(plan.loads['bending-in-plane'].evidence).not.toContain('loads.misstep.bending');
});
