/** No figure of the trade hides in this package: they live in the evidence, with their source. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

/** Counts, second moments of round sections, places in arrays of 3, 6 and 12, degrees and per cent. */
const PLAIN = new Set(['0', '1', '2', '3', '4', '5', '6', '8', '10', '12', '32', '64', '90', '100', '180']);

/** The schema's limits keep nonsense out; they are no figures of the trade. */
const SCHEMA = 'case-file.ts';

const STRINGS_AND_COMMENTS =
  /\/\*[\s\S]*?\*\/|\/\/[^\n]*|'(?:[^'\\\n]|\\.)*'|`(?:[^`\\]|\\.)*`|\/(?:[^/\\\n*]|\\.)+\/[gimsuy]*/g;
const NUMBER = /(?<![\w.$])(?:\d[\d_]*\.?\d*(?:e[+-]?\d+)?|0x[\da-f]+)(?![\w.])/gi;
/** `const NAME = 1e-9;`: a numerical choice with a name of its own. */
const NAMED = /^(?:export )?const [A-Z][A-Z\d_]* = /;

/** Figures of a source text that stand nameless in it. */
function namelessFigures(source: string): string[] {
  const bare = source.replace(STRINGS_AND_COMMENTS, (text) => text.replace(/[^\n]/g, ' '));
  return bare
    .split('\n')
    .filter((line) => !NAMED.test(line.trim()))
    .flatMap((line) => [...line.matchAll(NUMBER)].map(([figure]) => figure))
    .filter((figure) => !PLAIN.has(figure));
}

const sources = (readdirSync(import.meta.dirname, { recursive: true, encoding: 'utf8' }) as string[]).filter(
  (file) => /\.ts$/.test(file) && !/\.test\.ts$|straight-bone|stand-in/.test(file) && !file.endsWith(SCHEMA),
);

describe('every figure has a name or lives in the evidence', () => {
  test.each(sources)('%s', (file) => {
    expect(namelessFigures(readFileSync(join(import.meta.dirname, file), 'utf8'))).toEqual([]);
  });
});

test('a planted modulus is found, a named tolerance and a second moment are not', () => {
  expect(namelessFigures('const steel = 193_000 * area;')).toEqual(['193_000']);
  expect(namelessFigures('  return stress / 0.006;')).toEqual(['0.006']);
  expect(namelessFigures('const SAME_PLACE = 1e-4;\nconst second = (Math.PI / 64) * d ** 4; // 0.3')).toEqual([]);
});
