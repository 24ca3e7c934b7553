/** The command line as a user runs it: a process, its output, its exit code. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Plan } from '@bonewright/construct';
import { type LoadResult, readFrame, solveFrame } from '@bonewright/frame';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '../../..');
const CASES = join(ROOT, 'packages/construct/cases');
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'bonewright-cli-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function bonewright(...args: string[]) {
  const run = spawnSync(process.execPath, ['--import', 'tsx', 'apps/cli/src/main.ts', ...args], {
    cwd: ROOT,
    encoding: 'utf8',
    env: { ...process.env, INIT_CWD: folder },
  });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

function file(name: string, content: string | Uint8Array): string {
  writeFileSync(join(folder, name), content);
  return name;
}

const squirrel = () => JSON.parse(readFileSync(join(CASES, 'squirrel-tibia.json'), 'utf8')) as SquirrelCase;
interface SquirrelCase {
  bone: { stations: { outerMm: number[]; canalMm: number[] | null }[] };
  drawer: { pins: { kind: string; id: string }[]; columns: { id: string }[] };
  [key: string]: unknown;
}

function withConstruct(): SquirrelCase {
  const { drawer, ...rest } = squirrel();
  const drawerId = drawer.pins[0]!.id;
  const pins = [9, 20, 34, 46].map((sMm) => ({ drawerId, sMm }));
  return {
    ...rest,
    drawer,
    construct: { pins, column: { drawerId: drawer.columns[0]!.id, clearanceMm: 4 } },
    samples: 60,
  };
}

describe('bad input ends with exit 2 and one line that says what, where and what to do', () => {
  const refusals: [string, () => string[], RegExp][] = [
    ['no command', () => [], /no command was given/],
    ['an unknown command', () => ['plann', 'x.json'], /no command "plann".*film, trace/],
    ['a missing file', () => ['plan', 'absent.json'], /no such file.*absent\.json/],
    ['a folder for a file', () => ['assess', '.'], /folder/],
    ['text instead of JSON', () => ['assess', file('text.json', 'a tibia, 52 mm')], /not JSON.*text\.json byte 0/],
    ['an empty file', () => ['frame', file('empty.json', '')], /empty/],
    ["an unknown key's value", () => ['plan', file('kind.json', kindOf('barbed'))], /kind\.json drawer\.pins\.0\.kind/],
    ['a canal wider than its bone', () => ['assess', file('canal.json', wideCanal())], /canal.*stations\.2/],
    ['no construct to assess', () => ['assess', join(CASES, 'squirrel-tibia.json')], /construct/],
    ['a film with no pixels', () => ['film', file('empty.dcm', emptyFilm())], /pixel|image/i],
    ['a film that is text', () => ['film', file('words.dcm', 'these are words, not a film')], /words\.dcm/],
    ['a trace of an absent film', () => ['trace', file('trace.json', traceOf('none.dcm'))], /none\.dcm/],
    ['a sheet without a place to go', () => ['sheet', join(CASES, 'squirrel-tibia.json')], /-o FILE\.pdf/],
  ];
  test.each(refusals)('%s', (_, args, words) => {
    const { code, out, err } = bonewright(...args());
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(err).toMatch(/^error: /);
    expect(err).toMatch(words);
    expect([code, out]).toEqual([2, '']);
  });
});

test('assess prints the same bytes twice, and each exported frame solved on its own gives the printed stiffness', () => {
  const input = file('case.json', JSON.stringify(withConstruct()));
  const first = bonewright('assess', input, '--export-frames', 'frames');
  expect(first.err).toBe('');
  expect(bonewright('assess', input).out).toBe(first.out);
  const plan = JSON.parse(first.out) as Plan;
  const models = readdirSync(join(folder, 'frames'));
  expect(models).toHaveLength(5);
  for (const [load, { stiffness }] of Object.entries(plan.loads)) {
    const model = readFrame(JSON.parse(readFileSync(join(folder, 'frames', `plan-1.${load}.frame.json`), 'utf8')));
    const solved = solveFrame(model);
    expect(Object.keys(solved.loads)).toEqual([load]);
    // The same model through the same solver from text: only rounding may differ.
    expect(Math.abs(stiffnessOf(model.loads[load]!, solved.loads[load]!) / stiffness - 1)).toBeLessThan(1e-6);
  }
});

/** Load over the motion it makes, both by node: force over shortening, or moment over the angle between the ends, in degrees. */
function stiffnessOf(load: Readonly<Record<string, readonly number[]>>, { displacements }: LoadResult): number {
  const work = Object.entries(load).reduce((sum, [node, six]) => {
    const moved = displacements[node]!;
    return sum + six.reduce((s, f, i) => s + f * moved[i]!, 0);
  }, 0);
  const distal = load.distal!;
  const force = Math.hypot(...distal.slice(0, 3));
  const moment = Math.hypot(...distal.slice(3));
  return force > 0 ? force ** 2 / work : (moment ** 2 / work) * (Math.PI / 180);
}

function kindOf(kind: string): string {
  const bad = squirrel();
  bad.drawer.pins[0]!.kind = kind;
  return JSON.stringify(bad);
}

function wideCanal(): string {
  const bad = withConstruct();
  const station = bad.bone.stations[2]!;
  station.canalMm = station.outerMm.map((d) => d + 0.1);
  return JSON.stringify(bad);
}

const traceOf = (film: string): string =>
  JSON.stringify({
    film,
    calibration: { kind: 'scale', mmPerPixel: 0.1 },
    segments: [{ name: 'proximal', from: [10, 10], to: [10, 90] }],
  });

/** A DICOM part 10 file that says its modality and nothing more. */
function emptyFilm(): Uint8Array {
  const uid = '1.2.840.10008.1.2.1\0';
  const syntax = Buffer.concat([
    Buffer.from([2, 0, 0x10, 0]),
    Buffer.from('UI'),
    Buffer.from([uid.length, 0]),
    Buffer.from(uid),
  ]);
  const length = Buffer.from([2, 0, 0, 0, 0x55, 0x4c, 4, 0, syntax.length, 0, 0, 0]);
  const modality = Buffer.concat([
    Buffer.from([8, 0, 0x60, 0]),
    Buffer.from('CS'),
    Buffer.from([2, 0]),
    Buffer.from('DX'),
  ]);
  return Buffer.concat([Buffer.alloc(128), Buffer.from('DICM'), length, syntax, modality]);
}
