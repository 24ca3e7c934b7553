/** The process that `film-mutations.ts` starts: decodes damaged copies one by one and tells what came of each. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { decodeToReply, describeFilm, storedBytes } from '@bonewright/film';
import { mutated } from '@bonewright/film/mutated';

export type Outcome = 'refused' | 'unchanged' | 'other pixels' | 'other shape' | 'crash';

export interface Report {
  readonly seed: number;
  readonly file: string;
  readonly outcome: Outcome;
  readonly ms: number;
  readonly peakBytes: number;
  readonly words: string;
}

interface Case {
  readonly file: string;
  readonly facts: Readonly<Record<string, unknown>>;
}

const folder = new URL('../../packages/film/cases/dicom/', import.meta.url);
const { files }: { files: Case[] } = JSON.parse(readFileSync(new URL('manifest.json', folder), 'utf8'));
const films = files.map(({ file, facts }) => ({
  file,
  facts,
  bytes: Uint8Array.from(readFileSync(new URL(file, folder))),
}));
const SHAPE = [
  'rows',
  'cols',
  'frames',
  'samplesPerPixel',
  'bitsStored',
  'pixelRepresentation',
  'photometric',
] as const;

const [from = 0, to = 0] = process.argv.slice(2).map(Number);
for (let seed = from; seed < to; seed++) {
  const { file, facts, bytes } = films[seed % films.length]!;
  const start = performance.now();
  const [outcome, words] = await decoded(mutated(bytes, seed), facts);
  const report: Report = {
    ...{ seed, file, outcome, words, ms: performance.now() - start },
    peakBytes: process.resourceUsage().maxRSS * 1024,
  };
  process.send?.(report);
}
process.disconnect?.();

async function decoded(bytes: Uint8Array, facts: Case['facts']): Promise<[Outcome, string]> {
  try {
    const reply = await decodeToReply(bytes, 'film');
    if ('refused' in reply) return ['refused', ''];
    const described = describeFilm(reply.film);
    if (SHAPE.some((key) => described[key] !== facts[key])) return ['other shape', ''];
    const hash = createHash('sha256').update(storedBytes(reply.film)).digest('hex');
    return [hash === facts.storedPixelsSha256 ? 'unchanged' : 'other pixels', ''];
  } catch (error) {
    return ['crash', error instanceof Error ? `${error.stack}` : String(error)];
  }
}
