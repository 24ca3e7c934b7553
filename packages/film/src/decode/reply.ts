/** A decoded film or its refusal as a message between threads: what a worker posts, and what its owner makes of it. */
import { InputError } from '@bonewright/fault';
import type { Film } from '../model/film.ts';
import { decodeFilm } from './decode-film.ts';

export type DecodeReply =
  | { readonly film: Film }
  | { readonly refused: { readonly what: string; readonly path: string; readonly hint: string } };

/** Decodes and never rejects for bad input. Post it with `repliedBuffers` as the list of what moves. */
export async function decodeToReply(bytes: Uint8Array, name: string): Promise<DecodeReply> {
  try {
    return { film: await decodeFilm(bytes, name) };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const { what, path, hint } = error;
    return { refused: { what, path, hint } };
  }
}

/** The memory that may be moved instead of copied when the reply is posted. */
export function repliedBuffers(reply: DecodeReply): ArrayBuffer[] {
  if (!('film' in reply)) return [];
  const { buffer } = reply.film.pixels;
  return buffer instanceof ArrayBuffer ? [buffer] : [];
}

/** The film of a reply. @throws InputError for a refusal. */
export function filmOf(reply: DecodeReply): Film {
  if ('film' in reply) return reply.film;
  const { what, path, hint } = reply.refused;
  throw new InputError(what, path, hint);
}
