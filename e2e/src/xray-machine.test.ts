/** Films straight from an X-ray machine, played by DCMTK 3.6 (`echoscu`, `storescu`), with `storescp +B` as the reference. */
import { createHash } from 'node:crypto';
import {
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { decodeFilm, storedBytes } from '@bonewright/film';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { listeningOf, machine, type SecondReceiver, secondReceiver } from './machines.ts';
import { type ServerProcess, startServer } from './server-process.ts';

const CASES = join(import.meta.dirname, '../../packages/film/cases/dicom');
let server: ServerProcess;
let reference: SecondReceiver;
let folder: string;
let to: string[];

interface Waiting {
  readonly sha256: string;
  readonly sender: string;
  readonly header: Readonly<Record<string, string>>;
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'bonewright-xray-'));
  server = await startServer('--empty', '--receive', '127.0.0.1:0', '--aet', 'THEATRE');
  reference = await secondReceiver();
  const { receiving } = await inbox();
  expect(receiving).toMatchObject({ address: '127.0.0.1', title: 'THEATRE' });
  to = ['-aet', 'XRAY1', '-aec', 'THEATRE', '127.0.0.1', String(receiving?.port)];
});
afterAll(async () => {
  await reference?.stop();
  await server?.stop();
  rmSync(folder, { recursive: true, force: true });
});

test('without --receive nothing but the pages is listened for; with it, the one address given and no other', async () => {
  const off = await startServer('--empty');
  expect(listeningOf(off.pid)).toEqual([new URL(off.address).host]);
  expect(await (await fetch(`${off.address}/api/inbox`)).json()).toEqual({ receiving: null, films: [] });
  await off.stop();
  const { receiving } = await inbox();
  const both = [new URL(server.address).host, `127.0.0.1:${receiving?.port}`];
  expect(listeningOf(server.pid).toSorted()).toEqual(both.toSorted());
  expect(await (await fetch(`${inject('address')}/api/inbox`)).json()).toMatchObject({ receiving: null });
});

test('is anybody there: answered, also many times over; called by another title: turned away', async () => {
  expect(await machine('echoscu', ['--repeat', '20', ...to])).toMatchObject({ code: 0 });
  const wrong = await machine('echoscu', to.with(3, 'ELSEWHERE'));
  expect(wrong.words).toMatch(/Called AE Title Not Recognized/);
});

/** How storescu is told to send a film as it lies in its file. */
const AS_IT_IS = [
  ['u12.dcm', '-xe'],
  ['u12-implicit.dcm', '-xi'],
  ['s12-implicit.dcm', '-xi'],
  ['u12-bigendian.dcm', '-xb'],
  ['u8words-bigendian.dcm', '-xb'],
  ['u12-deflated.dcm', '-xd'],
  ['rgb-rle.dcm', '-xr'],
  ['u8m1-jpeg50.dcm', '-xy'],
  ['u12-jpeg51.dcm', '-xx'],
  ['mf12-jpeg70.dcm', '-xs'],
  ['u12-jpegls80.dcm', '-xt'],
  ['u12-jpegls81.dcm', '-xu'],
  ['u12-j2k90.dcm', '-xv'],
  ['u12-j2k91.dcm', '-xw'],
] as const;

test.each(AS_IT_IS)('%s comes out byte for byte, with the pixels it should have', async (name, syntax) => {
  const file = join(CASES, name);
  expect(await machine('storescu', [syntax, ...to, file])).toMatchObject({ code: 0 });
  await machine('storescu', [syntax, '127.0.0.1', String(reference.port), file]);
  const [film] = (await inbox()).films;
  expect(film?.sender).toBe('XRAY1');
  const kept = await attachment(film?.sha256 ?? '');
  const [ours, theirs] = [afterMeta(kept), afterMeta(reference.file())];
  expect(ours.dataSet.equals(theirs.dataSet)).toBe(true);
  expect(ours.syntax).toBe(theirs.syntax);
  expect(pixelHash(storedBytes(await decodeFilm(kept, name)))).toBe(expectedHash(name));
});

test('two machines at once, and several films in one go', async () => {
  const before = (await inbox()).films.length;
  const sent = [
    machine('storescu', ['-xs', ...to, ...['u12-jpeg70.dcm', 's12-jpeg70.dcm'].map((name) => join(CASES, name))]),
    machine('storescu', ['-xr', ...to.with(1, 'XRAY2'), ...['u12-rle.dcm', 'u8m1-rle.dcm'].map((n) => join(CASES, n))]),
  ];
  expect((await Promise.all(sent)).map(({ code }) => code)).toEqual([0, 0]);
  const { films } = await inbox();
  expect(films).toHaveLength(before + 4);
  expect(
    films
      .slice(0, 4)
      .map(({ sender }) => sender)
      .toSorted(),
  ).toEqual(['XRAY1', 'XRAY1', 'XRAY2', 'XRAY2']);
});

test.each([
  ['more rows than there are pixels for', 'u12.dcm', '-xe', tallerThanItIs, /the pixel data ends after/],
  ['a compressed picture damaged in its middle', 'u12-jpeg70.dcm', '-xs', holed, /Corrupt JPEG data/],
])('%s: refused, and nothing of it is kept', async (what, name, syntax, damage, why) => {
  const before = [await inbox(), keptFiles()];
  const file = join(folder, `${what}.dcm`);
  writeFileSync(file, damage(readFileSync(join(CASES, name))));
  const said = await machine('storescu', [syntax, ...to, file]);
  expect(said.code).not.toBe(0);
  expect(said.words).toMatch(/CannotUnderstand/);
  expect(server.logged()).toMatch(why);
  expect([await inbox(), keptFiles()]).toEqual(before);
});

test('a film above 200 MB: refused, nothing of it is kept, and the server goes on', async () => {
  const before = [await inbox(), keptFiles()];
  const file = join(folder, 'large.dcm');
  writeLarge(file, 220 * 1024 * 1024);
  expect((await machine('storescu', ['-xe', ...to, file])).code).not.toBe(0);
  expect(server.logged()).toMatch(/refused: the file is larger than 209715200 bytes/);
  expect([await inbox(), keptFiles()]).toEqual(before);
  expect(await machine('echoscu', to)).toMatchObject({ code: 0 });
  expect((await fetch(`${server.address}/api/health`)).status).toBe(200);
});

test('the log tells of films by their hash and of nobody by name', async () => {
  const { films } = await inbox();
  for (const { sha256 } of films) expect(server.logged()).toContain(sha256);
  const values = films.flatMap(({ header }) => [header.patientName, header.patientId]).filter((v) => v !== undefined);
  expect(values).toContain('INVENTED^SQUIRREL');
  for (const value of values) expect(server.logged()).not.toContain(value);
});

async function inbox(): Promise<{ receiving: { port: number } | null; films: Waiting[] }> {
  return (await fetch(`${server.address}/api/inbox`)).json();
}

async function attachment(sha256: string): Promise<Buffer> {
  return Buffer.from(await (await fetch(`${server.address}/api/attachments/${sha256}`)).arrayBuffer());
}

function keptFiles(): string[] {
  const inside = readdirSync(join(server.dataDir, 'attachments'), { recursive: true, withFileTypes: true });
  return inside.filter((entry) => entry.isFile()).map(({ name }) => name);
}

/** PS3.10 section 7.1: the first element of the file meta information says how long the rest of it is. */
function afterMeta(file: Buffer): { dataSet: Buffer; syntax: string } {
  const end = 144 + file.readUInt32LE(140);
  const at = file.indexOf(Buffer.from([2, 0, 0x10, 0, 0x55, 0x49]));
  const syntax = file.toString('latin1', at + 8, at + 8 + file.readUInt16LE(at + 6));
  return { dataSet: file.subarray(end), syntax: syntax.replace('\0', '') };
}

const pixelHash = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

function expectedHash(name: string): string {
  const { files } = JSON.parse(readFileSync(join(CASES, 'manifest.json'), 'utf8'));
  return files.find(({ file }: { file: string }) => file === name).facts.storedPixelsSha256;
}

function tallerThanItIs(file: Buffer): Buffer {
  const at = file.indexOf(Buffer.from([0x28, 0, 0x10, 0, 0x55, 0x53]));
  file.writeUInt16LE(6100, at + 8);
  return file;
}

function holed(file: Buffer): Buffer {
  return file.fill(0, file.length - 1500, file.length - 40);
}

/** A film whose picture is zeros without end. */
function writeLarge(path: string, pixelBytes: number): void {
  const file = readFileSync(join(CASES, 'u12.dcm'));
  const at = file.lastIndexOf(Buffer.from([0xe0, 0x7f, 0x10, 0, 0x4f, 0x57]));
  file.writeUInt32LE(pixelBytes, at + 8);
  writeSync(openSync(path, 'w'), file);
  truncateSync(path, at + 12 + pixelBytes);
}
