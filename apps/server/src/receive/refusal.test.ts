import { InputError } from '@bonewright/fault';
import { DiskError } from '@bonewright/store';
import { expect, test } from 'vitest';
import { refusalOf } from './refusal.ts';

// PS3.4 table B.2-1, PS3.7 annex C.
test.each([
  [new DiskError('the disk is full'), 0xa700, 'the disk is full'],
  [new InputError('the pixel data is missing', 'PixelData'), 0xc000, 'the pixel data is missing'],
  [new InputError('NumberOfFrames holds "MARLOW^ANNE"'), 0xc000, 'NumberOfFrames holds "..."'],
  [new InputError('one\nline, 7 bit: é \\'), 0xc000, 'one?line, 7 bit: ? ?'],
  [new TypeError('MARLOW^ANNE is no function'), 0x0110, 'a fault of our own (TypeError)'],
])('%s', (error, status, words) => {
  expect(refusalOf(error)).toEqual({ status, words });
});
