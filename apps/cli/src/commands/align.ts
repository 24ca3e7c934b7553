/** `align FILE.json`: the true angulation and its plane from two views. */
import { readAlignRequest, trueAngle } from '@bonewright/film';
import { fileArgument, naming, readInput } from '../input-file.ts';
import { print } from '../output.ts';

export async function run(args: readonly string[]): Promise<void> {
  const file = fileArgument(args, 'align FILE.json');
  const { angulationsDeg, betweenViewsDeg } = readInput(file, readAlignRequest);
  print(naming(file, () => trueAngle(angulationsDeg, betweenViewsDeg)));
}
