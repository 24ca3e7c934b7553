/** What the header says of the shape of its pixels (PS3.3 C.7.6.3), refused by name unless it is whole and consistent. */
import { InputError } from '@bonewright/fault';
import { printable } from '../bytes.ts';
import { EXPORT_AGAIN } from '../limits.ts';
import { checkSize } from '../size-check.ts';
import type { DataSet } from './elements.ts';
import { placeOf } from './tags.ts';
import { neededUnsigned16, text, unsigned16 } from './values.ts';

export interface ImageHeader {
  readonly rows: number;
  readonly cols: number;
  readonly frames: number;
  readonly samples: number;
  readonly photometric: string;
  /** Native colour only: samples of one kind lie together instead of pixel by pixel. */
  readonly planar: boolean;
  readonly bitsAllocated: 8 | 16;
  readonly bitsStored: number;
  readonly signed: boolean;
  /** Bytes of one decoded frame. */
  readonly frameBytes: number;
}

const SAMPLES: Record<string, number> = {
  MONOCHROME1: 1,
  MONOCHROME2: 1,
  'PALETTE COLOR': 1,
  RGB: 3,
  YBR_FULL: 3,
  YBR_FULL_422: 3,
  YBR_ICT: 3,
  YBR_RCT: 3,
};

/** @throws InputError naming the attribute that is missing, malformed or at odds with another. */
export function readImageHeader(set: DataSet): ImageHeader {
  const rows = neededUnsigned16(set, 'Rows');
  const cols = neededUnsigned16(set, 'Columns');
  const samples = neededUnsigned16(set, 'SamplesPerPixel');
  const photometric = readPhotometric(set, samples);
  const frames = readFrames(set);
  checkSize({ rows, cols, samples, frames }, placeOf('Rows'));
  const bits = readBits(set);
  const representation = neededUnsigned16(set, 'PixelRepresentation');
  if (representation > 1)
    throw new InputError(
      `PixelRepresentation is ${representation}, not 0 or 1`,
      placeOf('PixelRepresentation'),
      EXPORT_AGAIN,
    );
  const planar = samples > 1 ? (unsigned16(set, 'PlanarConfiguration') ?? 0) : 0;
  if (planar > 1)
    throw new InputError(`PlanarConfiguration is ${planar}, not 0 or 1`, placeOf('PlanarConfiguration'), EXPORT_AGAIN);
  const frameBytes = rows * cols * samples * (bits.bitsAllocated / 8);
  return {
    rows,
    cols,
    frames,
    samples,
    photometric,
    planar: planar === 1,
    ...bits,
    signed: representation === 1,
    frameBytes,
  };
}

function readPhotometric(set: DataSet, samples: number): string {
  const photometric = text(set, 'PhotometricInterpretation');
  const place = placeOf('PhotometricInterpretation');
  const needs = Object.hasOwn(SAMPLES, photometric) ? SAMPLES[photometric] : undefined;
  if (needs === undefined)
    throw new InputError(
      `the photometric interpretation "${printable(photometric)}" cannot be read`,
      place,
      EXPORT_AGAIN,
    );
  if (needs !== samples)
    throw new InputError(
      `${photometric} needs SamplesPerPixel ${needs}, the header says ${samples}`,
      place,
      EXPORT_AGAIN,
    );
  return photometric;
}

function readFrames(set: DataSet): number {
  const words = text(set, 'NumberOfFrames') || '1';
  if (/^\d{1,5}$/.test(words) && Number(words) > 0) return Number(words);
  throw new InputError(
    `NumberOfFrames holds "${printable(words)}", not a whole number of at least 1`,
    placeOf('NumberOfFrames'),
    EXPORT_AGAIN,
  );
}

function readBits(set: DataSet): Pick<ImageHeader, 'bitsAllocated' | 'bitsStored'> {
  const bitsAllocated = neededUnsigned16(set, 'BitsAllocated');
  const bitsStored = neededUnsigned16(set, 'BitsStored');
  const highBit = neededUnsigned16(set, 'HighBit');
  if (bitsAllocated !== 8 && bitsAllocated !== 16)
    throw new InputError(
      `BitsAllocated is ${bitsAllocated}`,
      placeOf('BitsAllocated'),
      'export the film with 8 or 16 bits',
    );
  if (bitsStored < 1 || bitsStored > bitsAllocated)
    throw new InputError(
      `BitsStored is ${bitsStored} of ${bitsAllocated} allocated`,
      placeOf('BitsStored'),
      EXPORT_AGAIN,
    );
  if (highBit !== bitsStored - 1)
    throw new InputError(
      `HighBit is ${highBit}, not BitsStored ${bitsStored} less 1`,
      placeOf('HighBit'),
      EXPORT_AGAIN,
    );
  return { bitsAllocated, bitsStored };
}
