/** `trace FILE.json`: the walls of a bone on one film, in millimetres at the bone. */
import { basename } from 'node:path';
import { readTraceRequest, traceFilm } from '@bonewright/film';
import { decodeIsolated } from '@bonewright/film/isolate';
import { besidePath, readBytes } from '../files.ts';
import { fileArgument, naming, namingLater, readInput } from '../input-file.ts';
import { print } from '../output.ts';

export async function run(args: readonly string[]): Promise<void> {
  const file = fileArgument(args, 'trace FILE.json');
  const { film: filmName, request } = readInput(file, readTraceRequest);
  const path = besidePath(file, filmName);
  const film = await namingLater(file, () => decodeIsolated(readBytes(path), basename(path)));
  print(naming(file, () => traceFilm(film, request)));
}
