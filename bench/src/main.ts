/** `npm run bench [TEXT]`: every measure, or those whose name holds the text, in one table. No figure here is a test. */
import { benchConstruct } from './construct.ts';
import { benchDrag } from './drag.ts';
import { benchFilmMutations } from './film-mutations.ts';
import { benchTrace } from './film-trace.ts';
import { benchFrame } from './frame.ts';
import { benchKills } from './kills.ts';
import { benchPlan } from './plan.ts';
import type { Row } from './row.ts';

const MEASURES: Record<string, () => readonly Row[] | Promise<readonly Row[]>> = {
  frame: benchFrame,
  construct: benchConstruct,
  plan: benchPlan,
  trace: () => benchTrace(),
  mutations: () => benchFilmMutations(),
  drag: benchDrag,
  kills: benchKills,
};

const wanted = process.argv[2] ?? '';
for (const [name, measure] of Object.entries(MEASURES)) {
  if (!name.includes(wanted)) continue;
  process.stdout.write(`\n${name}\n`);
  for (const row of await measure()) process.stdout.write(`${line(row)}\n`);
}

function line({ what, figure, unit, goal }: Row): string {
  const value = Number.isInteger(figure) ? String(figure) : figure.toPrecision(4);
  return `  ${what.padEnd(84)} ${value.padStart(10)} ${unit}${goal ? `  (${goal})` : ''}`;
}
