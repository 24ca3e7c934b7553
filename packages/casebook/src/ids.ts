/** Ids from random bytes that the caller draws: a page opened over plain HTTP has getRandomValues but no randomUUID. */
import { InputError } from '@bonewright/fault';

/** Crockford's base 32, lower case: no i, l, o or u, so that an id can be read aloud. */
const ALPHABET = '0123456789abcdefghjkmnpqrstvwxyz';
const BITS = 5;

/** How many random bytes an id is made of. */
export const ID_BYTES = 15;

/** 24 characters that hold the given 15 bytes. Throws InputError for another count. */
export function idFrom(randomBytes: Uint8Array): string {
  if (randomBytes.length !== ID_BYTES)
    throw new InputError(`an id is made of ${ID_BYTES} random bytes, not ${randomBytes.length}`);
  let id = '';
  let held = 0;
  let bits = 0;
  for (const byte of randomBytes) {
    held = (held << 8) | byte;
    bits += 8;
    while (bits >= BITS) {
      bits -= BITS;
      id += ALPHABET[(held >> bits) & 31];
    }
    held &= (1 << bits) - 1;
  }
  return id;
}
