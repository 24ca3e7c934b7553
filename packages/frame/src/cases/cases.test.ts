/**
 * Reference cases: NAME.json is a model, NAME.expected.json the figures that another solver or a closed form gives for it,
 * where they come from (`origin`) and how near ours must be (`rel`; numbers far below the largest of their kind may
 * differ by `rel` x 1e-3 of that). Adding a case touches no code.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readFrame, solveFrame } from '../index.ts';

interface Expected {
  readonly rel: number;
  readonly floor?: number;
  readonly criticalRel?: number;
  readonly loads: Record<string, Record<string, unknown>>;
}

const here = new URL('.', import.meta.url);
const read = (name: string) => JSON.parse(readFileSync(new URL(name, here), 'utf8'));
const names = readdirSync(here)
  .filter((name) => name.endsWith('.expected.json'))
  .map((name) => name.replace('.expected.json', ''));

test.each(names)('%s: every figure within its tolerance', (name) => {
  const expected: Expected = read(`${name}.expected.json`);
  const result = solveFrame(readFrame(read(`${name}.json`)));
  const far: string[] = [];
  let compared = 0;
  for (const [load, parts] of Object.entries(expected.loads)) {
    for (const [part, wanted] of Object.entries(parts)) {
      const got: unknown = Reflect.get(result.loads[load] ?? {}, part);
      for (const { path, value, found, tolerance } of pairs(part, wanted, got, expected)) {
        compared += 1;
        if (!(Math.abs(found - value) <= tolerance)) far.push(`${load}.${path}: ${found}, expected ${value}`);
      }
    }
  }
  expect(far).toEqual([]);
  expect(compared).toBeGreaterThan(20);
});

interface Pair {
  readonly path: string;
  readonly value: number;
  readonly found: number;
  readonly tolerance: number;
}

function pairs(
  part: string,
  wanted: unknown,
  got: unknown,
  { rel, floor = 1e-3, criticalRel = 0.005 }: Expected,
): Pair[] {
  const expected = leaves(wanted, part);
  const found = leaves(got, part);
  const largest = new Map<string, number>();
  for (const [path, value] of expected) {
    largest.set(kindOf(path), Math.max(largest.get(kindOf(path)) ?? 0, Math.abs(value)));
  }
  return [...expected].map(([path, value]) => {
    const relative = part === 'criticalFactor' ? criticalRel : rel;
    const size = Math.max(Math.abs(value), floor * (largest.get(kindOf(path)) ?? 0), 1e-12);
    return { path, value, found: found.get(path) ?? Number.NaN, tolerance: relative * size };
  });
}

/** Every number by its path; null stands for nothing to compare. */
function leaves(value: unknown, path: string): Map<string, number> {
  if (typeof value === 'number') return new Map([[path, value]]);
  if (typeof value !== 'object' || value === null) return new Map();
  return new Map(Object.entries(value).flatMap(([key, inner]) => [...leaves(inner, `${path}.${key}`)]));
}

/** Forces apart from moments, shifts apart from turns, everything else by its own name. */
function kindOf(path: string): string {
  const last = path.split('.').at(-1) ?? '';
  if (!/^\d$/.test(last)) return last;
  return `${path.split('.')[0]} ${Number(last) < 3 ? 'along' : 'about'}`;
}
