import { InputError } from '@bonewright/fault';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ID_BYTES, idFrom } from './ids.ts';
import { idSchema } from './payloads.ts';

const bytes = fc.uint8Array({ minLength: ID_BYTES, maxLength: ID_BYTES });

test('every id is accepted as an id and is 24 characters long', () => {
  fc.assert(
    fc.property(bytes, (random) => {
      expect(idSchema.parse(idFrom(random))).toHaveLength(24);
    }),
  );
});

test('no two different draws share an id: read as base 32 it gives the bytes back', () => {
  const alphabet = '0123456789abcdefghjkmnpqrstvwxyz';
  fc.assert(
    fc.property(bytes, (random) => {
      const number = [...idFrom(random)].reduce((sum, c) => sum * 32n + BigInt(alphabet.indexOf(c)), 0n);
      expect(number).toBe([...random].reduce((sum, byte) => sum * 256n + BigInt(byte), 0n));
    }),
  );
});

test('too few random bytes are refused', () => {
  expect(() => idFrom(new Uint8Array(8))).toThrow(InputError);
});
