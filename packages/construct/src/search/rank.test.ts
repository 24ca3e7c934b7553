/** The search on mechanics that answer at once; its own rules are what is tried here. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { STRAIGHT, straightCase } from '../checks/straight-bone.ts';
import type { CaseFile } from '../model/case-file.ts';
import type { Ranking } from '../model/plan.ts';
import { differInKind } from './offer.ts';
import { rankWith } from './rank.ts';
import { standIn } from './stand-in-mechanics.ts';
import { worstMargin } from './worth.ts';

const wire = (id: string, diameterMm: number, count = 8) =>
  ({ id, diameterMm, kind: 'smooth', material: 'steel-cold-worked', count }) as const;
const drawerOf = (pins: CaseFile['drawer']['pins']): Partial<CaseFile> => ({ drawer: { ...STRAIGHT.drawer, pins } });

const someCase = fc
  .record({
    from: fc.double({ min: 22, max: 34, noNaN: true }),
    broken: fc.double({ min: 0.5, max: 6, noNaN: true }),
    fissure: fc.double({ min: 0, max: 4, noNaN: true }),
    keepOut: fc.integer({ min: 2, max: 8 }),
    corridor: fc.integer({ min: -60, max: 60 }),
    width: fc.double({ min: 3.4, max: 7, noNaN: true }),
    canal: fc.double({ min: 0.4, max: 0.75, noNaN: true }),
    pins: fc.uniqueArray(fc.constantFrom(0.8, 0.9, 1, 1.2, 1.6), { minLength: 1, maxLength: 3 }),
    scale: fc.double({ min: 0.2, max: 2, noNaN: true }),
  })
  .map(({ from, broken, fissure, keepOut, corridor, width, canal, pins, scale }) => {
    const bone = {
      ...STRAIGHT.bone,
      stations: [0, 30, 60].map((sMm) => ({
        sMm,
        outerMm: [width, width] as [number, number],
        canalMm: [width * canal, width * canal] as [number, number],
      })),
    };
    const patientCase = straightCase({
      bone,
      fracture: { fromMm: from, toMm: from + broken, gapMm: broken / 2, fissuresMm: [[from - fissure, from]] },
      keepOut: { proximalMm: keepOut, distalMm: keepOut },
      corridors: [{ fromMm: 0, toMm: 60, aboutDeg: [corridor, corridor + 40] }],
      ...drawerOf(pins.map((d) => wire(`wire ${d}`, d))),
    });
    return { patientCase, mechanics: standIn(scale) };
  });

describe('whatever the case', () => {
  test('no plan is offered that a check stops; every one is assessed, in a safe place, of its own kind', () => {
    fc.assert(
      fc.property(someCase, ({ patientCase, mechanics }) => {
        const { plans, nearest } = rankWith(mechanics, patientCase);
        expect(plans.length > 0 || (nearest ?? '') !== '').toBe(true);
        expect(plans.length).toBeLessThanOrEqual(4);
        for (const plan of plans) expectSound(plan, patientCase);
        plans.forEach((plan, i) => {
          for (const other of plans.slice(0, i)) expect(differInKind(plan, other)).toBe(true);
        });
        expect(new Set(plans.map(({ label }) => label)).size).toBe(plans.length);
      }),
      { numRuns: 12 },
    );
  });

  test('the same case gives the same ranking', () => {
    fc.assert(
      fc.property(someCase, ({ patientCase, mechanics }) => {
        expect(rankWith(mechanics, patientCase)).toEqual(rankWith(mechanics, patientCase));
      }),
      { numRuns: 3 },
    );
  });
});

function expectSound(
  plan: Ranking['plans'][number],
  { fracture, keepOut, bone }: ReturnType<typeof straightCase>,
): void {
  expect(plan.checks.filter(({ verdict }) => verdict === 'stop')).toEqual([]);
  const places = plan.pins.map(({ sMm }) => sMm);
  expect(places).toEqual(places.toSorted((a, b) => a - b));
  expect(places.filter((s) => s < fracture.fromMm).length).toBeGreaterThanOrEqual(2);
  expect(places.filter((s) => s > fracture.toMm).length).toBeGreaterThanOrEqual(2);
  for (const [from, to] of [[fracture.fromMm, fracture.toMm] as const, ...fracture.fissuresMm]) {
    expect(places.filter((s) => s > from && s < to)).toEqual([]);
  }
  expect(places[0]).toBeGreaterThanOrEqual(keepOut?.proximalMm ?? 0);
  expect(places.at(-1)).toBeLessThanOrEqual(bone.lengthMm - (keepOut?.distalMm ?? 0));
}

describe('what is offered', () => {
  test('far, near, near, far: the outermost pins at the keep-outs, the innermost one bone width from the fracture', () => {
    const { plans } = rankWith(standIn(), straightCase());
    const { pins } = plans.find(({ im }) => im === null)!;
    const [first, last] = [pins[0]!.sMm, pins.at(-1)!.sMm];
    expect([first, last]).toEqual([5.5, 54.5]);
    const near = pins.filter(({ sMm }) => sMm < 29).at(-1)!;
    expect(near.sMm).toBe(24);
  });

  test('pins go in at the middle of the corridor, medially where none is marked', () => {
    const lateral = straightCase({ corridors: [{ fromMm: 0, toMm: 60, aboutDeg: [150, 210] }] });
    const directions = (patientCase: ReturnType<typeof straightCase>) =>
      new Set(rankWith(standIn(), patientCase).plans.flatMap(({ pins }) => pins.map(({ aboutDeg }) => aboutDeg)));
    expect(directions(lateral)).toEqual(new Set([180]));
    expect(directions(straightCase({ corridors: [] }))).toEqual(new Set([0]));
  });

  test('where corridors differ along the bone, all pins go where both are open', () => {
    const corridors = [
      { fromMm: 0, toMm: 30, aboutDeg: [-40, 20] as [number, number] },
      { fromMm: 30, toMm: 60, aboutDeg: [0, 60] as [number, number] },
    ];
    const { plans } = rankWith(standIn(), straightCase({ corridors }));
    expect(new Set(plans.flatMap(({ pins }) => pins.map(({ aboutDeg }) => aboutDeg)))).toEqual(new Set([10]));
  });

  test('with an IM pin in the drawer one plan has it and one has not', () => {
    const { plans } = rankWith(standIn(), straightCase());
    expect(new Set(plans.map(({ im }) => im !== null))).toEqual(new Set([true, false]));
  });

  test('margins that stop everywhere: the best are offered as last resorts', () => {
    const { plans, nearest } = rankWith(standIn(0.1), straightCase());
    expect(plans.length).toBeGreaterThan(0);
    expect(plans.every(({ lastResort, verdict }) => lastResort && verdict === 'stop')).toBe(true);
    expect(nearest).toBeUndefined();
  });

  test('margins that hold somewhere: nothing that stops is offered beside them', () => {
    const strongest = Math.max(...rankWith(standIn(), straightCase()).plans.map(worstMargin));
    const { plans } = rankWith(standIn(1.05 / strongest), straightCase());
    expect(plans.length).toBeGreaterThan(0);
    expect(plans.some(({ lastResort, verdict }) => lastResort || verdict === 'stop')).toBe(false);
  });

  test('two sizes are mixed only where the drawer is too short of one', () => {
    const sizes = (pins: CaseFile['drawer']['pins']) =>
      rankWith(standIn(), straightCase(drawerOf(pins))).plans.map(
        (plan) => new Set(plan.pins.map((p) => p.drawerId)).size,
      );
    expect(Math.max(...sizes([wire('a', 0.9), wire('b', 1)]))).toBe(1);
    expect(sizes([wire('a', 0.9, 3), wire('b', 1, 2)])).toContain(2);
  });
});

describe('nothing in the drawer can do it', () => {
  const nearest = (changes: Partial<CaseFile>) => {
    const ranking = rankWith(standIn(), straightCase(changes));
    expect(ranking.plans).toEqual([]);
    return ranking.nearest;
  };

  test('too few pins', () => {
    expect(nearest(drawerOf([wire('a', 1, 3)]))).toBe('Only 3 pins fit this bone; at least 4 are needed.');
    expect(nearest(drawerOf([wire('a', 1, 3), wire('b', 0.8, 1)]))).toContain('too few of a size');
    expect(nearest(drawerOf([]))).toBe('No fixator pin is in the drawer.');
  });

  test('too thick: the thinnest and what would fit', () => {
    const words = 'The thinnest pin, 2.4 mm, is 48 % of the bone (stop over 30 %). 1.5 mm would fit.';
    expect(nearest(drawerOf([wire('a', 2.4)]))).toBe(words);
  });

  test('no column, none thick enough, frame too heavy', () => {
    expect(nearest({ drawer: { ...STRAIGHT.drawer, columns: [] } })).toBe('No column is in the drawer.');
    const thread = [{ id: 'c', material: 'epoxy-putty', diameterMm: 2 }];
    expect(nearest({ drawer: { ...STRAIGHT.drawer, columns: thread } })).toContain('too thin');
    expect(nearest({ patient: { species: 'pygmy shrew', massG: 15 } })).toContain('too heavy');
  });

  test('a fragment without room, and why', () => {
    const short = { fracture: { fromMm: 49, toMm: 50, gapMm: 0.5 } };
    expect(nearest(short)).toBe('The distal fragment has room for 1 pin between fracture and joint; 2 are needed.');
    const blind = { corridors: [{ fromMm: 0, toMm: 30, aboutDeg: [-30, 30] as [number, number] }] };
    expect(nearest(blind)).toContain('No safe corridor is marked there.');
  });

  test('a growing patient whose plates nobody marked', () => {
    const { keepOut: _, ...unmarked } = STRAIGHT;
    const young = { ...unmarked, patient: { species: 'red squirrel', massG: 310, ageClass: 'juvenile' } };
    expect(rankWith(standIn(), straightCase({ ...young, keepOut: undefined } as Partial<CaseFile>)).nearest).toContain(
      'growth plates',
    );
  });

  test('what was refused is counted by check', () => {
    const { refused, candidates } = rankWith(standIn(), straightCase(drawerOf([wire('a', 2.4)])));
    expect(refused[0]?.check).toBe('pin-ratio');
    expect(refused[0]?.count).toBe(candidates);
  });
});

describe('while it works', () => {
  test('progress starts with middle values and ends with what is returned', () => {
    const seen: Ranking[] = [];
    const ranking = rankWith(standIn(), straightCase(), { onProgress: (soFar) => seen.push(soFar) });
    expect(seen.at(-1)?.plans).toEqual(ranking.plans);
    const { p05, p50 } = seen[0]!.plans[0]!.loads.torsion.margin;
    expect(p05).toBe(p50);
    expect(seen.map(({ solved }) => solved)).toEqual(seen.map(({ solved }) => solved).toSorted((a, b) => a - b));
  });

  test('no construct is solved twice, and all that were are counted', () => {
    const seen: string[] = [];
    const mechanics = standIn();
    const counting = {
      ...mechanics,
      nominal: (...asked: Parameters<typeof mechanics.nominal>) => {
        seen.push(JSON.stringify(asked[1]));
        return mechanics.nominal(...asked);
      },
    };
    const { solved, plans } = rankWith(counting, straightCase());
    expect(new Set(seen).size).toBe(seen.length);
    expect(solved).toBeGreaterThanOrEqual(seen.length + plans.length);
  });

  test('an abort ends it early with what it has', () => {
    const all = rankWith(standIn(), straightCase());
    const { plans, solved } = rankWith(standIn(), straightCase(), { signalAborted: () => true });
    expect(plans.length).toBeGreaterThan(0);
    expect(solved).toBeLessThan(all.solved);
  });
});
