/** `film FILE`: reads one film and says what it holds. */
import { createHash } from 'node:crypto';
import { basename } from 'node:path';
import { describeFilm, storedBytes } from '@bonewright/film';
import { decodeIsolated } from '@bonewright/film/isolate';
import { readBytes } from '../files.ts';
import { fileArgument, namingLater } from '../input-file.ts';
import { print } from '../output.ts';

export async function run(args: readonly string[]): Promise<void> {
  const file = fileArgument(args, 'film FILE');
  const film = await namingLater(file, () => decodeIsolated(readBytes(file), basename(file)));
  const storedPixelsSha256 = createHash('sha256').update(storedBytes(film)).digest('hex');
  print({ ...describeFilm(film), storedPixelsSha256 });
}
