/** `frame FILE.json`: solves a general 3-D beam frame. */
import { readFrame, solveFrame } from '@bonewright/frame';
import { fileArgument, naming, readInput } from '../input-file.ts';
import { print } from '../output.ts';

export async function run(args: readonly string[]): Promise<void> {
  const file = fileArgument(args, 'frame FILE.json');
  const model = readInput(file, readFrame);
  print(naming(file, () => solveFrame(model)));
}
