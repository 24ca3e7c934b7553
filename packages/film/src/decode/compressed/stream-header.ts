/** What a compressed stream says of itself, held against what the file around it says. */
import { InputError } from '@bonewright/fault';
import { EXPORT_AGAIN } from '../limits.ts';

export interface StreamHeader {
  readonly rows: number;
  readonly cols: number;
  readonly samples: number;
  readonly precision: number;
}

/** The shape a file's header gives its pictures. */
export interface FrameShape {
  readonly rows: number;
  readonly cols: number;
  readonly samples: number;
  readonly bitsAllocated: number;
}

export const damagedAt = (what: string, where: string, at: number): InputError =>
  new InputError(what, `${where}, byte ${at} of the compressed stream`, EXPORT_AGAIN);

/** @throws InputError where the two disagree: a codec would fill a picture of another shape without a word. */
export function checkAgainst(stream: StreamHeader, header: FrameShape, where: string): void {
  const sizeOf = (s: Omit<StreamHeader, 'precision'>) => `${s.cols} x ${s.rows} pixels of ${s.samples} samples`;
  if (sizeOf(stream) !== sizeOf(header))
    throw new InputError(
      `the compressed stream holds ${sizeOf(stream)}, the header says ${sizeOf(header)}`,
      where,
      EXPORT_AGAIN,
    );
  if (stream.precision >= 1 && stream.precision <= header.bitsAllocated) return;
  throw new InputError(
    `the compressed stream has ${stream.precision} bits a sample, the header allows ${header.bitsAllocated}`,
    where,
    EXPORT_AGAIN,
  );
}
