/** Time of a whole ranking on the four cases of the construct package, first in a cold process and then warm, in one thread: a second one was tried and gained nothing. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { rank, readCase } from '@bonewright/construct';
import type { Row } from './row.ts';

const CASES = ['squirrel-tibia', 'owl-tibiotarsus', 'hedgehog-femur', 'rabbit-tibia'];
const FOLDER = join(import.meta.dirname, '../../packages/construct/cases');

export function benchPlan(): readonly Row[] {
  return ['first time', 'again'].flatMap((when) => CASES.map((name) => timed(name, when)));
}

function timed(name: string, when: string): Row {
  const patientCase = readCase(JSON.parse(readFileSync(join(FOLDER, `${name}.json`), 'utf8')));
  const start = performance.now();
  const { plans, candidates, solved } = rank(patientCase);
  return {
    what: `full plan, ${name}, ${when}: ${candidates} looked at, ${solved} solved, ${plans.length} offered`,
    figure: performance.now() - start,
    unit: 'ms',
    goal: 'at most 1000',
  };
}
