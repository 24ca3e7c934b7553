/**
 * Files by their SHA-256, in a folder beside the database. A file is written under a passing name, flushed, then renamed:
 * under its hash there is a whole file or none.
 */
import { createHash, randomBytes } from 'node:crypto';
import { createReadStream } from 'node:fs';
import * as nodeFiles from 'node:fs/promises';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { InputError } from '@bonewright/fault';
import { diskError } from '../disk-error.ts';
import type { Attachment, PutOptions } from '../store.ts';

/** The few things asked of a disk, so that a test can make each of them fail. */
export type Disk = Pick<typeof nodeFiles, 'mkdir' | 'open' | 'rename' | 'rm'>;

const LARGEST_BYTES = 256 * 1024 * 1024;
const INCOMING = 'incoming';
const STALE_MS = 24 * 60 * 60 * 1000;

export class AttachmentFolder {
  readonly #dir: string;
  readonly #disk: Disk;

  constructor(dir: string, disk: Disk = nodeFiles) {
    this.#dir = dir;
    this.#disk = disk;
  }

  /** Makes the folder and clears what an upload cut short left behind more than a day ago. */
  async open(now: number): Promise<void> {
    const incoming = join(this.#dir, INCOMING);
    await this.#disk.mkdir(incoming, { recursive: true });
    for (const name of await nodeFiles.readdir(incoming)) {
      const path = join(incoming, name);
      const { mtimeMs } = await nodeFiles.stat(path);
      if (now - mtimeMs > STALE_MS) await this.#disk.rm(path, { force: true });
    }
  }

  /** Keeps these bytes. Throws InputError where they are none, too many, or not the ones that were meant. */
  async put(bytes: AsyncIterable<Uint8Array>, options: PutOptions = {}): Promise<Attachment> {
    const passing = join(this.#dir, INCOMING, `${randomBytes(12).toString('hex')}.part`);
    try {
      const kept = await this.#write(passing, bytes, options.largestBytes ?? LARGEST_BYTES);
      requireWhole(kept, options.expectedSha256);
      await options.inspect?.(passing);
      await this.#keep(passing, kept.sha256);
      return kept;
    } catch (error) {
      await this.#disk.rm(passing, { force: true });
      throw diskError(error);
    }
  }

  /** The bytes under that hash. Throws where they are gone or cut short. */
  async read({ sha256, byteLength }: Attachment): Promise<Readable> {
    const { size } = await nodeFiles.stat(this.pathOf(sha256));
    if (size !== byteLength) throw new Error(`attachment ${sha256} has ${size} bytes instead of ${byteLength}`);
    return createReadStream(this.pathOf(sha256));
  }

  /** How the kept file differs from its hash; null where it is whole. */
  async faultOf(sha256: string): Promise<string | null> {
    const hash = createHash('sha256');
    try {
      for await (const chunk of createReadStream(this.pathOf(sha256))) hash.update(chunk);
    } catch (error) {
      return error instanceof Error && 'code' in error && error.code === 'ENOENT'
        ? 'its file is missing'
        : String(error);
    }
    return hash.digest('hex') === sha256 ? null : 'its bytes do not have its hash';
  }

  pathOf(sha256: string): string {
    return join(this.#dir, sha256.slice(0, 2), sha256);
  }

  async #write(path: string, bytes: AsyncIterable<Uint8Array>, largest: number): Promise<Attachment> {
    const hash = createHash('sha256');
    let byteLength = 0;
    const file = await this.#disk.open(path, 'wx');
    try {
      for await (const chunk of bytes) {
        byteLength += chunk.length;
        if (byteLength > largest)
          throw new InputError(`the file is larger than ${largest} bytes`, '', 'send a smaller one');
        hash.update(chunk);
        await file.writeFile(chunk);
      }
      await file.sync();
    } finally {
      await file.close();
    }
    return { sha256: hash.digest('hex'), byteLength };
  }

  async #keep(passing: string, sha256: string): Promise<void> {
    const dir = join(this.#dir, sha256.slice(0, 2));
    await this.#disk.mkdir(dir, { recursive: true });
    await this.#disk.rename(passing, this.pathOf(sha256));
    await this.#flushFolder(dir);
    await this.#flushFolder(this.#dir);
  }

  async #flushFolder(dir: string): Promise<void> {
    const folder = await this.#disk.open(dir, 'r');
    await folder.sync().finally(() => folder.close());
  }
}

function requireWhole({ sha256, byteLength }: Attachment, expected: string | undefined): void {
  if (byteLength === 0) throw new InputError('the file is empty', '', 'send the file again');
  if (expected !== undefined && expected !== sha256)
    throw new InputError(`the file arrived with hash ${sha256}, not ${expected}`, '', 'send it again');
}
