/** Why a film was not kept: a status for the machine (PS3.4 table B.2-1) and words for people, without any value from the film. */
import { InputError } from '@bonewright/fault';
import { DiskError } from '@bonewright/store';

export interface Refusal {
  readonly status: number;
  readonly words: string;
}

const OUT_OF_RESOURCES = 0xa700;
const CANNOT_UNDERSTAND = 0xc000;
/** PS3.7 annex C: processing failure. */
const PROCESSING_FAILURE = 0x0110;

export function refusalOf(error: unknown): Refusal {
  if (error instanceof DiskError) return { status: OUT_OF_RESOURCES, words: plain(error.message) };
  if (error instanceof InputError) return { status: CANNOT_UNDERSTAND, words: plain(error.what) };
  return {
    status: PROCESSING_FAILURE,
    words: `a fault of our own (${error instanceof Error ? error.name : 'unknown'})`,
  };
}

/** Printable ASCII in one line; what stands in quotes may come from the film. */
export const plain = (text: string): string =>
  text
    .replace(/"[^"]*"/g, '"..."')
    .replace(/[’‘]/g, "'")
    .replace(/[^\x20-\x7e]|\\/g, '?');
