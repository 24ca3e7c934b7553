/** Whole constructs against solid finite-element models of them; origin in cases/solid/README.md. */
import { describe, expect, test } from 'vitest';
import owl from '../../cases/solid/owl-tibiotarsus-tilted.json' with { type: 'json' };
import owlSolid from '../../cases/solid/owl-tibiotarsus-tilted.solid.json' with { type: 'json' };
import squirrel from '../../cases/solid/squirrel-tibia.json' with { type: 'json' };
import squirrelSolid from '../../cases/solid/squirrel-tibia.solid.json' with { type: 'json' };
import { evaluateNominal } from '../assess.ts';
import { LOADS } from '../model/plan.ts';
import { readCase } from '../read-case.ts';

/**
 * The rules (joints at mid wall, depth in the putty) were fitted to single pins; on the four whole constructs they were
 * tried on they were off by 4.3 % at most. 6 % leaves room for the mesh and for the part nobody has explained.
 */
const TOLERANCE = 0.06;

describe.each([
  ['squirrel tibia, four square pins', squirrel, squirrelSolid],
  ['owl tibiotarsus, four tilted pins', owl, owlSolid],
])('%s', (_, file, solid) => {
  const patientCase = readCase(file);
  const plan = evaluateNominal(patientCase, patientCase.construct!);
  test.each(LOADS)('%s: stiffness within 6 %% of the solid model', (load) => {
    const ratio = plan.loads[load].stiffness / solid.loads[load].stiffness;
    expect(Math.abs(ratio - 1)).toBeLessThan(TOLERANCE);
  });
});
