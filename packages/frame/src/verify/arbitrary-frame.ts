/** Random sound frames for property tests: a tree of members from a fixed node, more members, rigids, springs, gaps. */
import fc from 'fast-check';
import type { FrameModel, Section, Vec3, Vec6 } from '../model/frame-model.ts';

type Group<K extends keyof FrameModel> = { -readonly [N in keyof FrameModel[K]]: FrameModel[K][N] };

const SECTIONS: Record<string, Section> = {
  thin: { shape: 'round', od: 0.9 },
  thick: { shape: 'round', od: 2.4 },
  tube: { shape: 'tube', od: 3.2, id: 2.1 },
  oval: { shape: 'ovalTube', odY: 4.5, odZ: 3.6, idY: 2.5, idZ: 2 },
  rod: { shape: 'properties', A: 3.1, Iy: 0.42, Iz: 1.3, J: 0.8 },
};
const MATERIALS = { steel: { E: 193000, nu: 0.3 }, bone: { E: 15000, nu: 0.3 }, putty: { E: 2500, nu: 0.38 } };

const coordinate = fc.integer({ min: -12, max: 12 }).map((value) => value * 1.3);
const place = fc.tuple(coordinate, coordinate, coordinate);
const size = fc.integer({ min: -1000, max: 1000 }).map((value) => value / 97);
const six = fc.tuple(size, size, size, size, size, size);
const sectionName = fc.constantFrom(...Object.keys(SECTIONS));
const materialName = fc.constantFrom(...Object.keys(MATERIALS));
/** A direction with no small part, so that no default or given axis is near parallel by chance. */
const direction = fc.tuple(
  fc.integer({ min: 1, max: 5 }),
  fc.integer({ min: -5, max: -1 }),
  fc.integer({ min: 7, max: 9 }),
);

export interface FrameShape {
  /** Contacts and sleeves too; without them the frame is linear. */
  readonly gaps?: boolean;
  /** Only supports and springs that look the same from every side, and y axes given. */
  readonly turnable?: boolean;
}

/** Random frames with two load cases, `a` and `b`. */
export function arbitraryFrame({ gaps = false, turnable = false }: FrameShape = {}): fc.Arbitrary<FrameModel> {
  return fc
    .record({
      beam: fc.constantFrom('euler' as const, 'timoshenko' as const),
      places: fc.uniqueArray(place, { minLength: 3, maxLength: 7, selector: (p) => p.join() }),
      links: fc.array(fc.tuple(fc.nat(), fc.nat(), sectionName, materialName), { minLength: 12, maxLength: 12 }),
      axis: direction,
      arms: fc.array(fc.tuple(fc.nat(), place), { maxLength: 2 }),
      springs: fc.array(fc.tuple(fc.nat(), fc.double({ min: 10, max: 1e5, noNaN: true })), { maxLength: 2 }),
      more: fc.nat(),
      gapSeeds: fc.array(fc.tuple(fc.nat(), fc.nat(), fc.double({ min: 0, max: 0.3, noNaN: true }), direction), {
        minLength: 1,
        maxLength: 3,
      }),
      loads: fc.tuple(six, six, six),
    })
    .map((seed) => build(seed, gaps, turnable));
}

interface Seed {
  readonly beam: 'euler' | 'timoshenko';
  readonly places: readonly Vec3[];
  readonly links: readonly (readonly [number, number, string, string])[];
  readonly axis: Vec3;
  readonly arms: readonly (readonly [number, Vec3])[];
  readonly springs: readonly (readonly [number, number])[];
  readonly more: number;
  readonly gapSeeds: readonly (readonly [number, number, number, Vec3])[];
  readonly loads: readonly [Vec6, Vec6, Vec6];
}

function build(seed: Seed, gaps: boolean, turnable: boolean): FrameModel {
  const { places } = seed;
  const nodes: Group<'nodes'> = Object.fromEntries(places.map((p, i) => [`n${i}`, p]));
  const members: Group<'members'> = {};
  const link = (name: string, from: number, to: number, i: number) => {
    const [, , section, material] = seed.links[i % seed.links.length] ?? [0, 0, 'thin', 'steel'];
    const yAxis = turnable ? squareTo(places[from] ?? [0, 0, 0], places[to] ?? [0, 0, 0], seed.axis) : undefined;
    members[name] = { from: `n${from}`, to: `n${to}`, section, material, ...(yAxis ? { yAxis } : {}) };
  };
  for (let i = 1; i < places.length; i++) link(`tree${i}`, (seed.links[i]?.[0] ?? 0) % i, i, i);
  for (let i = 0; i < seed.more % 4; i++) {
    const [a, b] = [(seed.links[i]?.[0] ?? 0) % places.length, (seed.links[i]?.[1] ?? 0) % places.length];
    if (a !== b) link(`more${i}`, a, b, i + 5);
  }
  const rigids: Group<'rigids'> = {};
  seed.arms.forEach(([at, tip], i) => {
    nodes[`arm${i}`] = tip;
    rigids[`arm${i}`] = { from: `n${at % places.length}`, to: `arm${i}` };
  });
  const springs: Group<'springs'> = {};
  seed.springs.forEach(([at, k], i) => {
    const to = `n${at % places.length}`;
    nodes[`hung${i}`] = nodes[to] ?? [0, 0, 0];
    springs[`hung${i}`] = {
      from: `hung${i}`,
      to,
      k: turnable ? [k, k, k, k, k, k] : [k, 2 * k, 3 * k, k, k / 2, k / 3],
    };
  });
  const last = places.length - 1;
  const model: FrameModel = {
    beam: seed.beam,
    buckling: false,
    nodes,
    materials: MATERIALS,
    sections: SECTIONS,
    members,
    rigids,
    springs,
    contacts: {},
    sleeves: {},
    supports: { n0: ['x', 'y', 'z', 'rx', 'ry', 'rz'], ...(turnable ? {} : partSupport(seed, last)) },
    loads: {
      a: { [`n${last}`]: seed.loads[0], [seed.arms.length > 0 ? 'arm0' : 'n1']: seed.loads[1] },
      b: { n1: seed.loads[2], [seed.springs.length > 0 ? 'hung0' : 'n2']: seed.loads[0] },
    },
  };
  return gaps ? withGaps(model, seed) : model;
}

function partSupport(seed: Seed, last: number): FrameModel['supports'] {
  const choices: FrameModel['supports'][] = [
    {},
    { [`n${last}`]: ['x', 'rz'] },
    seed.arms.length > 0 ? { arm0: ['y'] } : { n1: ['z'] },
    seed.arms.length > 1 ? { arm0: ['x', 'y'], arm1: ['z'], [`n${last}`]: ['x'] } : { n2: ['ry'] },
  ];
  return choices[seed.more % 4] ?? {};
}

/** Walls where nodes of the frame are, fixed or on a member of their own, with contacts or sleeves between. */
function withGaps(model: FrameModel, seed: Seed): FrameModel {
  const nodes: Group<'nodes'> = { ...model.nodes };
  const members: Group<'members'> = { ...model.members };
  const contacts: Group<'contacts'> = {};
  const sleeves: Group<'sleeves'> = {};
  const supports: Group<'supports'> = { ...model.supports };
  const touching = [...seed.arms.map((_, i) => `arm${i}`), ...seed.places.slice(1).map((_, i) => `n${i + 1}`)];
  seed.gapSeeds.forEach(([at, kind, gapMm, axis], i) => {
    const node = touching[at % touching.length] ?? 'n1';
    const wall = kind % 3 === 0 ? `wall${i}` : 'wall';
    if (!nodes[wall] || wall === `wall${i}`) {
      nodes[wall] = nodes[node] ?? [0, 0, 0];
      if (kind % 5 < 2) supports[wall] = ['x', 'y', 'z', 'rx', 'ry', 'rz'];
      else Object.assign(members, carrier(model, wall, nodes[wall]));
    }
    if (String(nodes[wall]) !== String(nodes[node])) return;
    const k = 1000 * (1 + (kind % 7));
    if (kind % 2 === 0) contacts[`c${i}`] = { from: wall, to: node, normal: axis, gapMm, k };
    else sleeves[`s${i}`] = { inner: node, outer: wall, axis, clearanceMm: gapMm, k };
  });
  return { ...model, nodes, members, contacts, sleeves, supports };
}

/** A member that carries a wall from a node of the frame that lies elsewhere. */
function carrier(model: FrameModel, wall: string, place: Vec3): FrameModel['members'] {
  const from = Object.keys(model.nodes).find((node) => String(model.nodes[node]) !== String(place)) ?? 'n0';
  const yAxis = squareTo(model.nodes[from] ?? [0, 0, 0], place, [1, -2, 8]);
  return { [`to ${wall}`]: { from, to: wall, section: 'thin', material: 'steel', yAxis } };
}

/** A y axis that is not along the member. */
function squareTo(from: Vec3, to: Vec3, wanted: Vec3): Vec3 {
  const d: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const cross: Vec3 = [
    d[1] * wanted[2] - d[2] * wanted[1],
    d[2] * wanted[0] - d[0] * wanted[2],
    d[0] * wanted[1] - d[1] * wanted[0],
  ];
  return Math.hypot(...cross) > 1e-3 * Math.hypot(...d) * Math.hypot(...wanted)
    ? wanted
    : [wanted[1], wanted[2], wanted[0]];
}
