/** A six-pin frame on a small broken bone, with a ring of contacts at the fracture: what one construct costs to solve. */
import type { CompileOptions, FrameModel } from '@bonewright/frame';

type Group<K extends keyof FrameModel> = { -readonly [N in keyof FrameModel[K]]: FrameModel[K][N] };

const PINS = [-18, -12, -6, 6, 12, 18];
const WALL = 2.5;
const COLUMN = 12;
const RIM = 8;

/** About 300 unknowns: bone stations, two cortices a pin, column. `withPin` adds a loose intramedullary pin in sleeves. */
export function sixPinFrame(withPin = false): FrameModel {
  const nodes: Group<'nodes'> = {};
  const members: Group<'members'> = {};
  const rigids: Group<'rigids'> = {};
  const springs: Group<'springs'> = {};
  const contacts: Group<'contacts'> = {};
  const sleeves: Group<'sleeves'> = {};
  const beam = (name: string, from: string, to: string, section: string, material: string) => {
    members[name] = { from, to, section, material };
  };
  const places = (from: number, to: number, step: number): number[] =>
    Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);
  const bone = [places(-24, -1.5, 1.5), places(1.5, 24, 1.5)];
  const endOf = (x: number) => (x === -24 ? 'proximal' : x === 24 ? 'distal' : `bone${x}`);
  for (const part of bone) {
    part.forEach((x, i) => {
      nodes[endOf(x)] = [x, 0, 0];
      if (i > 0) beam(`shaft${x}`, endOf(part[i - 1] ?? 0), endOf(x), 'bone', 'bone');
    });
  }
  PINS.forEach((x, i) => {
    nodes[`column${i}`] = [x, COLUMN, 0];
    nodes[`inside${i}`] = [x, COLUMN - 2, 0];
    rigids[`grip${i}`] = { from: `column${i}`, to: `inside${i}` };
    [-WALL, WALL].forEach((y, wall) => {
      const [cortex, pin] = [`cortex${i}-${wall}`, `pin${i}-${wall}`];
      nodes[cortex] = [x, y, 0];
      nodes[pin] = [x, y, 0];
      rigids[cortex] = { from: endOf(x), to: cortex };
      springs[pin] = { from: cortex, to: pin, k: [1e6, 1e6, 1e6, 6000, 300, 6000] };
    });
    beam(`in${i}`, `pin${i}-0`, `pin${i}-1`, 'pin', 'steel');
    beam(`out${i}`, `pin${i}-1`, `inside${i}`, 'pin', 'steel');
    if (i > 0) beam(`column${i}`, `column${i - 1}`, `column${i}`, 'column', 'putty');
  });
  for (let i = 0; i < RIM; i++) {
    const [y, z] = [2.5 * Math.cos((i * 2 * Math.PI) / RIM), 2.5 * Math.sin((i * 2 * Math.PI) / RIM)];
    for (const x of [-1.5, 1.5]) {
      nodes[`rim${i}at${x}`] = [x, y, z];
      rigids[`rim${i}at${x}`] = { from: endOf(x), to: `rim${i}at${x}` };
    }
    contacts[`rim${i}`] = { from: `rim${i}at-1.5`, to: `rim${i}at1.5`, normal: [1, 0, 0], gapMm: 0.05, k: 4000 };
  }
  if (withPin) {
    const stops = [-21, -12, -6, -3, 3, 6, 12, 21];
    stops.forEach((x, i) => {
      nodes[`nail${i}`] = [x, 0, 0];
      if (i > 0) beam(`nail${i}`, `nail${i - 1}`, `nail${i}`, 'nail', 'steel');
      sleeves[`nail${i}`] = { inner: `nail${i}`, outer: endOf(x), axis: [1, 0, 0], clearanceMm: 0.2, k: 20000 };
    });
    springs.seat = { from: endOf(21), to: 'nail7', k: [100, 100, 100, 10, 50, 50] };
  }
  return {
    beam: 'timoshenko',
    buckling: false,
    nodes,
    materials: { steel: { E: 193000, nu: 0.3 }, bone: { E: 15000, nu: 0.3 }, putty: { E: 2500, nu: 0.38 } },
    sections: {
      pin: { shape: 'round', od: 1.2 },
      nail: { shape: 'round', od: 1.6 },
      column: { shape: 'round', od: 7 },
      bone: { shape: 'ovalTube', odY: 6, odZ: 5.4, idY: 4, idZ: 3.4 },
    },
    members,
    rigids,
    springs,
    contacts,
    sleeves,
    supports: {},
    loads: {
      'axial-ball': { distal: [-15, 0, 0, 0, 0, 0] },
      'axial-guided': { distal: [-15, 0, 0, 0, 0, 0] },
      'bending-in-plane': { proximal: [0, 0, 0, 0, 0, -60], distal: [0, 0, 0, 0, 0, 60] },
      'bending-out-of-plane': { proximal: [0, 0, 0, 0, -60, 0], distal: [0, 0, 0, 0, 60, 0] },
      torsion: { distal: [0, 0, 0, 40, 0, 0] },
    },
  };
}

/** Which supports hold it under which load. */
export const SIX_PIN_SUPPORTS: CompileOptions = {
  supportSets: {
    ball: { proximal: ['x', 'y', 'z', 'rx'], distal: ['y', 'z'] },
    guided: { proximal: ['x', 'y', 'z', 'rx', 'ry', 'rz'], distal: ['y', 'z', 'rx', 'ry', 'rz'] },
    torsion: { proximal: ['x', 'y', 'z', 'rx', 'ry', 'rz'], distal: ['y', 'z'] },
  },
  supportSetOf: { 'axial-guided': 'guided', torsion: 'torsion' },
};

/**
 * The same frame as other programs can solve it: no contacts, Bernoulli beams, pins bonded to the cortex instead of on
 * springs, a round bone (so that torsion is beyond doubt), one load.
 */
export function bondedFrame(): FrameModel {
  const model = sixPinFrame();
  const bonds = Object.entries(model.springs).map(([name, { from, to }]) => [`bond ${name}`, { from, to: to ?? from }]);
  return {
    ...model,
    beam: 'euler',
    sections: { ...model.sections, bone: { shape: 'tube', od: 6, id: 4 } },
    rigids: { ...model.rigids, ...Object.fromEntries(bonds) },
    springs: {},
    contacts: {},
    supports: SIX_PIN_SUPPORTS.supportSets?.torsion ?? {},
    loads: { push: { distal: [-15, 0, 0, 40, 0, 0] } },
  };
}
