/** What a case bundle says of itself: the case, how long its record is, the hash that vouches for it, every file with its hash. */
import { InputError } from '@bonewright/fault';
import { z } from 'zod';
import { idSchema, timeSchema } from '../payloads.ts';

export const MANIFEST = 'manifest.json';
export const EVENTS = 'events.json';
const BUNDLE_VERSION = 1;

const hash = z.string().regex(/^[0-9a-f]{64}$/, 'that is no SHA-256');
const file = z.strictObject({
  path: z.string().regex(/^(?:(?:files|papers)\/)?[a-z0-9-]+\.[a-z0-9]{1,5}$/, 'a bundle has no file of such a name'),
  sha256: hash,
});
const manifestSchema = z.strictObject({
  format: z.literal('bonewright-case', 'this is not a case of Bonewright'),
  version: z.literal(BUNDLE_VERSION, 'it was written by a newer version of Bonewright'),
  caseId: idSchema,
  exportedAt: timeSchema,
  events: z.number().int().positive(),
  /** Of the last event: SHA-256 over the hash of the one before, a line feed and the event's text. */
  chain: hash,
  files: z.array(file),
});

export type Manifest = z.output<typeof manifestSchema>;
export type BundleFile = Manifest['files'][number];

/** A manifest as the bundle holds it. */
export function manifestText(manifest: Omit<Manifest, 'format' | 'version'>): string {
  return JSON.stringify({ format: 'bonewright-case', version: BUNDLE_VERSION, ...manifest }, null, 2);
}

/** Reads a manifest. Throws InputError where it is none. */
export function readManifest(text: string): Manifest {
  const result = manifestSchema.safeParse(parsedJson(text, MANIFEST));
  if (result.success) return result.data;
  const issue = result.error.issues[0];
  throw new InputError(
    `${MANIFEST}: ${issue?.message ?? 'it cannot be read'}`,
    issue?.path.join('.') ?? '',
    'ask for the copy again',
  );
}

/** The value that a text of a bundle holds. Throws InputError where it is not JSON. */
export function parsedJson(text: string, path: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new InputError(`${path} cannot be read`, path, 'ask for the copy again');
  }
}

/** Where a film or photograph lies in the bundle: under its hash, so that no name from elsewhere becomes a path. */
export function bundlePath({ sha256, fileName }: { readonly sha256: string; readonly fileName: string }): string {
  const ending = /\.([a-z0-9]{1,5})$/.exec(fileName.toLowerCase())?.[1] ?? 'bin';
  return `files/${sha256}.${ending}`;
}
