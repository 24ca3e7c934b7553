/**
 * The same linear frame solved by CalculiX (Debian: calculix-ccx), if it is installed: its general beam (user element
 * U1), rigids as equations. Loads one case; for its time and for its displacements.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type FrameModel, type Member, sectionProperties, type Vec3 } from '@bonewright/frame';

const JOB = 'frame';
/** A shear factor that leaves shear out. */
const NO_SHEAR = '1.e10';

export interface CalculixRun {
  /** Time of the whole process. */
  readonly milliseconds: number;
  /** Six motions of the node asked for. */
  readonly displacement: readonly number[];
}

/** Runs one process; null where CalculiX is not installed. */
export function runCalculix(model: FrameModel, node: string): CalculixRun | null {
  const directory = mkdtempSync(join(tmpdir(), 'frame-'));
  try {
    writeFileSync(join(directory, `${JOB}.inp`), inputDeck(model, node));
    const start = performance.now();
    const { error, status } = spawnSync('ccx', ['-i', JOB], { cwd: directory });
    const milliseconds = performance.now() - start;
    if (error || status !== 0) return null;
    return { milliseconds, displacement: readMotion(readFileSync(join(directory, `${JOB}.dat`), 'utf8')) };
  } finally {
    rmSync(directory, { recursive: true });
  }
}

function readMotion(text: string): number[] {
  const line = text.trim().split('\n').at(-1) ?? '';
  return line.trim().split(/\s+/).slice(1).map(Number);
}

function inputDeck(model: FrameModel, watched: string): string {
  const number = new Map(Object.keys(model.nodes).map((name, i) => [name, i + 1]));
  const of = (name: string) => number.get(name) ?? 0;
  const place = (name: string): Vec3 => model.nodes[name] ?? [0, 0, 0];
  return [
    '*NODE,NSET=ALL',
    ...Object.entries(model.nodes).map(([name, xyz]) => [of(name), ...xyz.map(exact)].join()),
    '*USER ELEMENT,TYPE=U1,NODES=2,INTEGRATION POINTS=2,MAXDOF=6',
    ...Object.entries(model.materials).flatMap(([name, { E, nu }]) => [
      `*MATERIAL,NAME=${name}`,
      '*ELASTIC',
      `${E},${nu}`,
    ]),
    ...Object.values(model.members).flatMap((member, i) => [
      ...beam(model, member, `${2 * i + 1},${of(member.from)},${of(member.to)}`, i, 'A'),
      ...beam(model, member, `${2 * i + 2},${of(member.from)},${of(member.to)}`, i, 'B'),
    ]),
    ...Object.values(model.rigids).flatMap(({ from, to }) => rigidEquations(of(from), of(to), place(from), place(to))),
    '*BOUNDARY',
    ...Object.entries(model.supports).flatMap(([name, held]) =>
      held.map((freedom) => `${of(name)},${FREEDOM_NUMBERS[freedom]}`),
    ),
    '*STEP\n*STATIC\n*CLOAD',
    ...Object.entries(Object.values(model.loads)[0] ?? {}).flatMap(([name, six]) =>
      six.flatMap((value, k) => (value === 0 ? [] : [`${of(name)},${k + 1},${exact(value)}`])),
    ),
    `*NSET,NSET=WATCHED\n${of(watched)}`,
    '*NODE PRINT,NSET=WATCHED\nU\n*END STEP\n',
  ].join('\n');
}

const FREEDOM_NUMBERS = { x: 1, y: 2, z: 3, rx: 4, ry: 5, rz: 6 } as const;

/** Twenty characters at most: a longer field is cut. */
const exact = (value: number): string => (value === 0 ? '0.' : value.toExponential(12));

/**
 * In version 2.20 a U1 bends rightly only in the plane of its direction 1 (in the other, shift and turn are coupled with
 * the wrong sign as soon as its first end moves). So each member is two, of half the area: A bends along local y, B along z.
 * Its torsion constant is the sum of the two second moments, right for round members.
 */
function beam(model: FrameModel, member: Member, element: string, i: number, which: 'A' | 'B'): string[] {
  const section = model.sections[member.section];
  if (!section) throw new Error(`no section ${member.section}`);
  const { areaMm2, iyMm4, izMm4 } = sectionProperties(section);
  const { y, z } = axesOf(model, member);
  const [inertia, direction] = which === 'A' ? [izMm4, y] : [iyMm4, z];
  return [
    `*ELEMENT,TYPE=U1,ELSET=${which}${i}`,
    element,
    `*BEAM SECTION,ELSET=${which}${i},MATERIAL=${member.material},SECTION=GENERAL`,
    [areaMm2 / 2, inertia, 0, 0].map(exact).concat(NO_SHEAR).join(),
    direction.map(exact).join(),
  ];
}

/** Local y and z of a member that has no y axis of its own and does not run along global z. */
function axesOf(model: FrameModel, member: Member): { readonly y: Vec3; readonly z: Vec3 } {
  const [a, b] = [model.nodes[member.from] ?? [0, 0, 0], model.nodes[member.to] ?? [0, 0, 0]];
  const [dx, dy, dz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const length = Math.hypot(dx, dy, dz);
  const x: Vec3 = [dx / length, dy / length, dz / length];
  const flat = Math.hypot(x[0], x[1]);
  const z: Vec3 = [x[1] / flat, -x[0] / flat, 0];
  return { y: [z[1] * x[2] - z[2] * x[1], z[2] * x[0] - z[0] * x[2], z[0] * x[1] - z[1] * x[0]], z };
}

/** u_to = u_from + theta x r, theta_to = theta: six equations with the follower's motion first. */
function rigidEquations(from: number, to: number, a: Vec3, b: Vec3): string[] {
  const lever = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
  return [1, 2, 3, 4, 5, 6].flatMap((freedom) => {
    const terms = [`${to},${freedom},1.`, `${from},${freedom},-1.`];
    if (freedom <= 3) {
      const [after, last] = [freedom % 3, (freedom + 1) % 3];
      // (theta x r)_k = theta_after r_last - theta_last r_after
      for (const [turn, arm, sign] of [
        [after, last, -1],
        [last, after, 1],
      ] as const) {
        const factor = sign * (lever[arm] ?? 0);
        if (factor !== 0) terms.push(`${from},${turn + 4},${exact(factor)}`);
      }
    }
    return ['*EQUATION', String(terms.length), terms.join()];
  });
}
