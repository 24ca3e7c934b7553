/**
 * Trends that were published of whole constructs. Geometry was seldom printed in full, so that a test asks for the
 * direction and the size of a change, not for a figure; what the model misses stands in docs/verification.md.
 */
import { solveFrame } from '@bonewright/frame';
import { describe, expect, test } from 'vitest';
import { LOADS, type LoadName } from '../model/plan.ts';
import { type PinAt, type StraightBone, straightBone } from '../straight-bone.ts';
import { stiffness } from './figures-of-load.ts';
import { constructSolver } from './solver.ts';

type Stiffnesses = Readonly<Record<LoadName, number>>;

function stiffnessesOf(bone: StraightBone): Stiffnesses {
  const patientCase = straightBone(bone);
  const solver = constructSolver(patientCase, patientCase.construct!);
  const solution = solver.solve(solver.nominal);
  const [ball, guided, inPlane, across, torsion] = LOADS.map((load) => stiffness(solver.frame, load, solution));
  return {
    'axial-ball': ball!,
    'axial-guided': guided!,
    'bending-in-plane': inPlane!,
    'bending-out-of-plane': across!,
    torsion: torsion!,
  };
}

/** Change of a load's stiffness in per cent. */
const gain = (to: Stiffnesses, from: Stiffnesses, load: LoadName): number => 100 * (to[load] / from[load] - 1);

const RABBIT: StraightBone = {
  lengthMm: 60,
  outerMm: 6,
  canalMm: 4,
  boneYoungMPa: 15_000,
  gapMm: 2,
  pinMm: 1.6,
  pins: [[15], [25], [35], [45]],
  columnMm: 6,
  clearanceMm: 6,
};
const rabbit = (change: Partial<StraightBone> = {}): Stiffnesses => stiffnessesOf({ ...RABBIT, ...change });

describe('hawk humerus, IM pin tied in (Van Wettere et al. 2009, J Avian Med Surg)', () => {
  /** Sizes of a red-tailed hawk's humerus from memory: only numbers of pins and changes in stiffness were printed. */
  const hawk = (pins: readonly number[]): Stiffnesses =>
    stiffnessesOf({
      species: 'red-tailed hawk',
      lengthMm: 105,
      outerMm: 8.5,
      canalMm: 7,
      gapMm: 8,
      pinMm: 1.6,
      pins: pins.map((s): PinAt => [s]),
      columnMm: 12,
      clearanceMm: 10,
      im: { diameterMm: 4, tiedIn: true },
      grip: 'usual',
    });
  const one = hawk([18, 87]);
  const two = hawk([18, 38, 67, 87]);
  const three = hawk([18, 38, 67, 77, 87]);

  /** Half to twice the printed change, as sizes had to be guessed. */
  const near = (percent: number, printed: number) => {
    expect(percent).toBeGreaterThan(printed / 2);
    expect(percent).toBeLessThan(printed * 2);
  };
  test('one to two pins a fragment: torsion +110 %, axial +60 %', () => {
    near(gain(two, one, 'torsion'), 110);
    near(gain(two, one, 'axial-ball'), 60);
  });
  test('a third pin in the distal fragment: torsion +27 %, axial hardly', () => {
    near(gain(three, two, 'torsion'), 27);
    expect(gain(three, two, 'axial-ball')).toBeLessThan(gain(three, two, 'torsion') / 2);
  });
});

describe('one 1.6 mm wire against three of 0.8 mm, cantilevered (J Hand Surg Am 2015, PMID 25980734)', () => {
  /** Tip stiffness of one wire in N/mm, by the frame solver. */
  const cantilever = (od: number, lengthMm: number): number => {
    const { loads } = solveFrame({
      beam: 'euler',
      buckling: false,
      nodes: { A: [0, 0, 0], B: [lengthMm, 0, 0] },
      materials: { steel: { E: 193_000, nu: 0.3 } },
      sections: { wire: { shape: 'round', od } },
      members: { wire: { from: 'A', to: 'B', section: 'wire', material: 'steel' } },
      rigids: {},
      springs: {},
      contacts: {},
      sleeves: {},
      supports: { A: ['x', 'y', 'z', 'rx', 'ry', 'rz'] },
      loads: { tip: { B: [0, 0, -1, 0, 0, 0] } },
    });
    return -1 / loads.tip!.displacements.B![2];
  };
  test('set to the 1.6 mm wire (3.20 N/mm), the three thin ones come out within 25 % of 0.76 N/mm', () => {
    const lengthMm = Math.cbrt(cantilever(1.6, 1) / 3.2);
    const three = 3 * cantilever(0.8, lengthMm);
    // Pure bending cannot give the measured 4.2 to 1 but 5.3 to 1: the rest is how wires sit in bone.
    expect(Math.abs(three / 0.76 - 1)).toBeLessThan(0.25);
  });
});

describe('thicker pins pay less and less (ring fixator, equine metacarpus: axial as d^1.6 from 3.2 to 6.4 mm, not d^4)', () => {
  const exponent = (from: number, to: number, load: LoadName) =>
    Math.log(rabbit({ pinMm: to })[load] / rabbit({ pinMm: from })[load]) / Math.log(to / from);
  const bentByPins = LOADS.filter((load) => load !== 'bending-in-plane');
  test.each(bentByPins)('%s: the exponent falls as pins get thick and never reaches 4', (load) => {
    const thin = exponent(0.6, 0.8, load);
    const thick = exponent(1.6, 2, load);
    expect(thin).toBeLessThan(4);
    expect(thick).toBeLessThan(thin);
    expect(thick).toBeGreaterThan(0);
  });
  test('bent in the plane of the frame, the column gives and pins hardly matter', () => {
    expect(exponent(0.6, 2, 'bending-in-plane')).toBeLessThan(0.5);
  });
});

describe('offset of the column (rat fixators, Willie et al. 2009, J Orthop Res 27; Strube, Mehta, Duda, recalled)', () => {
  test('axial stiffness falls as the offset grows, with a power that tends to the third', () => {
    const power = (from: number, to: number) =>
      Math.log(rabbit({ clearanceMm: to })['axial-guided'] / rabbit({ clearanceMm: from })['axial-guided']) /
      Math.log((to + 6) / (from + 6));
    expect(power(3, 6)).toBeGreaterThan(power(18, 24));
    expect(power(18, 24)).toBeGreaterThan(-3);
    expect(power(3, 6)).toBeLessThan(-1);
  });

  test('rat femur, 7.5 to 15 mm: 74 to 10 N/mm, a fall of 7.4 times; ours within 30 %', () => {
    const rat = (offsetMm: number) =>
      stiffnessesOf({
        species: 'rat',
        lengthMm: 36,
        outerMm: 3.8,
        canalMm: 2.4,
        gapMm: 1,
        pinMm: 1,
        pinMaterial: 'titanium',
        pins: [[6], [13], [23], [30]],
        columnMm: 3,
        columnMaterial: 'titanium',
        clearanceMm: offsetMm - 3.8 / 2 - 3 / 2,
      });
    // Pin size and number were not seen: the ratio hangs on the free length alone, 4.1 to 11.6 mm here.
    const fall = rat(7.5)['axial-guided'] / rat(15)['axial-guided'];
    expect(Math.abs(fall / 7.4 - 1)).toBeLessThan(0.3);
  });

  test('titanium pins lie well below steel ones', () => {
    for (const load of LOADS) expect(gain(rabbit({ pinMaterial: 'titanium' }), rabbit(), load)).toBeLessThan(-3);
  });
});

describe('type I and II (dog tibia, Am J Vet Res 1999;60:615-20)', () => {
  test('two-sided is stiffer than one-sided along the bone, across the frame and in its plane', () => {
    const [one, two] = [rabbit(), rabbit({ twoColumns: true })];
    for (const load of LOADS) expect(gain(two, one, load)).toBeGreaterThan(20);
  });
});

describe('pins of a one-sided frame, 15 degrees (Klemeit et al. 2023, Bioengineering 10:982)', () => {
  const tilted = (tilts: readonly [number, number, number, number]) =>
    rabbit({ pins: [15, 25, 35, 45].map((s, i): PinAt => [s, tilts[i]!]) });
  test.each(LOADS)('%s: converging in the bone stiffest, parallel between, diverging softest', (load) => {
    const converging = tilted([-15, 15, -15, 15])[load];
    const diverging = tilted([15, -15, 15, -15])[load];
    expect(converging).toBeGreaterThan(rabbit()[load]);
    expect(diverging).toBeLessThan(rabbit()[load]);
  });
});

describe('number of pins (human frame, Sternick et al. 2012: 2 to 3 +20 %, 3 to 4 +19 % axial)', () => {
  test('each further pin in the same span stiffens the frame, by less than the first doubling', () => {
    const span = (places: readonly number[]) => rabbit({ pins: places.map((s): PinAt => [s]) })['axial-guided'];
    const two = span([15, 25, 35, 45]);
    const three = span([15, 20, 25, 35, 40, 45]);
    const four = span([15, 18.3, 21.7, 25, 35, 38.3, 41.7, 45]);
    expect(three).toBeGreaterThan(two);
    expect(four).toBeGreaterThan(three);
    expect(four / two).toBeLessThan(1.42);
  });
});

describe('column (raptor tibiotarsus model, 24 constructs: metal bar stiffer than acrylic)', () => {
  test.each(LOADS)('%s: a 3.2 mm steel rod beats 6 mm of acrylic', (load) => {
    expect(gain(rabbit({ columnMm: 3.2, columnMaterial: 'steel-cold-worked' }), rabbit(), load)).toBeGreaterThan(0);
  });
});
