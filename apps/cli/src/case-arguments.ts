/** Arguments of `assess` and `plan`, and the frames they export. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { type Case, constructOf, exportFrames, type Plan } from '@bonewright/construct';
import { userPath, writeBytes } from './files.ts';
import { fileArgument } from './input-file.ts';
import { parsedArguments } from './parsed-arguments.ts';

export interface CaseArguments {
  readonly file: string;
  readonly framesDir: string | null;
}

/** Reads `CASE.json [--export-frames DIR]`. */
export function caseArguments(args: readonly string[], usage: string): CaseArguments {
  const { values, positionals } = parsedArguments(args, { 'export-frames': { type: 'string' } }, usage);
  const dir = values['export-frames'];
  return { file: fileArgument(positionals, usage), framesDir: dir ? userPath(dir) : null };
}

/** Writes `plan-N.LOAD.frame.json` into the folder for every plan and load. */
export function exportPlanFrames(dir: string, patientCase: Case, plans: readonly Plan[]): void {
  mkdirSync(dir, { recursive: true });
  plans.forEach((plan, i) => {
    for (const [load, model] of Object.entries(exportFrames(patientCase, constructOf(plan)))) {
      writeBytes(join(dir, `plan-${i + 1}.${load}.frame.json`), `${JSON.stringify(model, null, 1)}\n`);
    }
  });
}
