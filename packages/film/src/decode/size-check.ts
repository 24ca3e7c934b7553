/** The one check on how many values a film claims to hold; every format passes here before memory is taken. */
import { InputError } from '@bonewright/fault';
import { MOST_VALUES } from './limits.ts';

/** What a header claims of the size of its picture. */
export interface ClaimedSize {
  readonly rows: number;
  readonly cols: number;
  readonly samples: number;
  readonly frames: number;
}

/** Refuses empty and oversized pictures; `where` names the place in the file that claims the size. */
export function checkSize({ rows, cols, samples, frames }: ClaimedSize, where: string): void {
  if (rows < 1 || cols < 1)
    throw new InputError(`the picture is ${cols} x ${rows} pixels`, where, 'give a film that holds a picture');
  const values = rows * cols * samples * frames;
  if (values <= MOST_VALUES) return;
  throw new InputError(
    `the header claims ${cols} x ${rows} pixels, ${samples} samples each, ${frames} frames: ${values} values`,
    where,
    `give a film of at most ${MOST_VALUES} values`,
  );
}
