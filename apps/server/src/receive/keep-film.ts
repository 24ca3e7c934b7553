/** A film as it arrives: onto the disk, decoded once under the guards, renamed into place, listed. In this order or not at all. */
import { readFile } from 'node:fs/promises';
import { decodeIsolated } from '@bonewright/film/isolate';
import type { Attachment, Store } from '@bonewright/store';

const LARGEST_BYTES = 200 * 1024 * 1024;

/** What helps to say whose film it is; keys of a film's header. */
const TELLING = [
  'patientName',
  'patientId',
  'manufacturer',
  'species',
  'breed',
  'bodyPart',
  'view',
  'viewPosition',
  'laterality',
  'imageLaterality',
  'studyDescription',
  'seriesDescription',
  'acquisitionDateTime',
  'acquisitionDate',
  'acquisitionTime',
  'contentDate',
  'contentTime',
  'studyDate',
  'studyTime',
];

/** Resolves when the film is safe and listed. Throws InputError where it is too large or no sound film, DiskError where it has no room. */
export async function keepFilm(store: Store, bytes: AsyncIterable<Uint8Array>, sender: string): Promise<Attachment> {
  let header: Readonly<Record<string, string>> = {};
  const kept = await store.putAttachment(bytes, {
    largestBytes: LARGEST_BYTES,
    inspect: async (path) => {
      ({ header } = await decodeIsolated(await readFile(path), 'the film'));
    },
  });
  const telling = Object.entries(header).filter(([key]) => TELLING.includes(key));
  await store.inbox.add({ sha256: kept.sha256, sender, header: Object.fromEntries(telling) });
  return kept;
}
