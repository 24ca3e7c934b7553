/** `assess CASE.json`: the margins of the construct that the case holds. */
import { assess, readCase } from '@bonewright/construct';
import { caseArguments, exportPlanFrames } from '../case-arguments.ts';
import { naming, readInput } from '../input-file.ts';
import { print } from '../output.ts';

export async function run(args: readonly string[]): Promise<void> {
  const { file, framesDir } = caseArguments(args, 'assess CASE.json [--export-frames DIR]');
  const patientCase = readInput(file, readCase);
  const plan = naming(file, () => assess(patientCase));
  if (framesDir) exportPlanFrames(framesDir, patientCase, [plan]);
  print(plan);
}
