/** `plan CASE.json`: a ranked list of plans from the drawer. */
import { rank, readCase } from '@bonewright/construct';
import { caseArguments, exportPlanFrames } from '../case-arguments.ts';
import { naming, readInput } from '../input-file.ts';
import { print } from '../output.ts';

export async function run(args: readonly string[]): Promise<void> {
  const { file, framesDir } = caseArguments(args, 'plan CASE.json [--export-frames DIR]');
  const patientCase = readInput(file, readCase);
  const ranking = naming(file, () => rank(patientCase));
  if (framesDir) exportPlanFrames(framesDir, patientCase, ranking.plans);
  print(ranking);
}
