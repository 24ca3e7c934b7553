/** Tokens that only their holder knows: the store gets their hash. */
import { createHash, randomBytes } from 'node:crypto';
import { ID_BYTES, idFrom } from '@bonewright/casebook';

const TOKEN_BYTES = 32;

export function newToken(): { readonly token: string; readonly tokenHash: string } {
  const token = randomBytes(TOKEN_BYTES).toString('base64url');
  return { token, tokenHash: hashOf(token) };
}

/** The token is random through and through, so a plain hash is enough. */
export const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');

export const newId = (): string => idFrom(randomBytes(ID_BYTES));
