/** Files named on the command line or inside an input file: read, or refused in words. */
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { InputError } from '@bonewright/fault';

const LARGEST_BYTES = 200 * 1024 * 1024;

/** The path as the user meant it: npm runs us in the checkout, the user stood elsewhere. */
export const userPath = (path: string): string => resolve(process.env.INIT_CWD ?? process.cwd(), path);

/** A path inside an input file is relative to that file. */
export const besidePath = (file: string, path: string): string => resolve(dirname(file), path);

/** The bytes of a file; an InputError where there is none, or it is a folder, empty or too large. */
export function readBytes(path: string): Uint8Array {
  try {
    const { size } = statSync(path);
    if (size > LARGEST_BYTES)
      throw new InputError(`the file is ${size} bytes`, path, `give one below ${LARGEST_BYTES}`);
    return readFileSync(path);
  } catch (error) {
    throw fileFault(error, path);
  }
}

/** Writes a file whole; an InputError where that place cannot be written. */
export function writeBytes(path: string, bytes: Uint8Array | string): void {
  try {
    writeFileSync(path, bytes);
  } catch (error) {
    throw fileFault(error, path);
  }
}

const WORDS: Record<string, [string, string]> = {
  ENOENT: ['there is no such file or folder', 'check the path'],
  EISDIR: ['this is a folder, not a file', 'name a file in it'],
  EACCES: ['this may not be read or written', 'check its rights'],
  ENOSPC: ['the disk is full', 'make room and try again'],
  ENAMETOOLONG: ['the path is too long', 'check the path'],
};

function fileFault(error: unknown, path: string): Error {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const words = WORDS[code];
  if (words) return new InputError(words[0], path, words[1]);
  return error instanceof Error ? error : new Error(String(error));
}
