/** One ZIP in a thread of its own, unpacked one file at a time. */
import { type ZipEntry, zipEntries, zipEntry } from '@bonewright/film';
import { expose, transfer } from 'comlink';
import { type Answer, answer } from '../engine/answer.ts';

let packed = new Uint8Array();

const jobs = {
  open: (bytes: Uint8Array<ArrayBuffer>, name: string): Promise<Answer<ZipEntry[]>> =>
    answer(() => {
      packed = bytes;
      return zipEntries(bytes, name);
    }),
  unpack: async (entry: ZipEntry): Promise<Answer<Uint8Array>> => {
    const unpacked = await answer(() => zipEntry(packed, entry));
    return unpacked.ok ? transfer(unpacked, [unpacked.value.buffer]) : unpacked;
  },
};

export type ZipJobs = typeof jobs;

expose(jobs);
