/** The server's routes. Three ways to fail: it cannot be reached, it would not take it, somebody else was first. */
import type { BoardRow } from '@bonewright/casebook';
import type { Board } from './database.ts';
import type { AnyRecord, RecordKind } from './record-kind.ts';

/** Nobody answered, or answered with a fault of its own: try again later. */
export class Unreachable extends Error {
  override readonly name = 'Unreachable';
}

/** Nobody is signed in any more: what waits is sent once somebody is. */
export class SignInNeeded extends Unreachable {}

const signInListeners = new Set<() => void>();

export const onSignInNeeded = (listener: () => void): unknown => signInListeners.add(listener);

/** The server understood and would not: trying again changes nothing. */
export class Refused extends Error {
  override readonly name = 'Refused';
  readonly status: number;

  constructor(status: number, message: string) {
    super(message);
    this.status = status;
  }
}

/** Other events came first: read them and number again. */
export class Conflict extends Error {
  override readonly name = 'Conflict';
}

const JSON_TYPE = 'application/json';

export async function getBoard(): Promise<Board> {
  return ask('/api/cases');
}

/** Patients that ended, the last changed first; after the place `before` where there is one. */
export async function getEnded(before: number | null): Promise<Board> {
  return ask(`/api/cases?ended=yes${before === null ? '' : `&before=${before}`}`);
}

/** The next page of the patients that go on. */
export async function getMore(before: number): Promise<Board> {
  return ask(`/api/cases?before=${before}`);
}

/** A patient in whose record every word of the question begins a word; `line` is where, null where it is so called. */
export interface Found {
  readonly row: BoardRow;
  readonly line: { readonly seq: number; readonly text: string } | null;
  readonly asked: readonly string[];
}

export async function search(question: string, signal: AbortSignal): Promise<readonly Found[]> {
  const { found } = await ask<{ found: readonly Found[] }>(`/api/search?q=${encodeURIComponent(question)}`, { signal });
  return found;
}

/** Null where the server has no such record. */
export async function getEvents<T extends AnyRecord>(
  { address, read }: Pick<RecordKind<T>, 'address' | 'read'>,
  after: number,
): Promise<T['recorded'][] | null> {
  try {
    const { events } = await ask<{ events: unknown[] }>(`${address}?after=${after}`);
    return events.map(read);
  } catch (error) {
    if (error instanceof Refused && error.status === 404) return null;
    throw error;
  }
}

export async function postEvents(
  address: string,
  events: readonly AnyRecord['known'][],
): Promise<{ readonly seq: number }> {
  const body = JSON.stringify({ events });
  return ask(address, { method: 'POST', headers: { 'content-type': JSON_TYPE }, body });
}

export async function putFile(sha256: string, bytes: Uint8Array): Promise<void> {
  const body = new Blob([Uint8Array.from(bytes)]);
  await ask(`/api/attachments/${sha256}`, {
    method: 'PUT',
    headers: { 'content-type': 'application/octet-stream' },
    body,
  });
}

export async function getFile(sha256: string): Promise<Uint8Array> {
  const response = await reach(`/api/attachments/${sha256}`);
  return new Uint8Array(await response.arrayBuffer());
}

/** A film that an X-ray machine sent and nobody has matched to a patient yet. */
export interface ReceivedFilm {
  readonly sha256: string;
  readonly byteLength: number;
  readonly receivedAt: string;
  /** As the machine calls itself. */
  readonly sender: string;
  /** What its header says that helps to tell whose it is. */
  readonly header: Readonly<Record<string, string>>;
}

export interface Inbox {
  /** Where films are listened for; null where they are not. */
  readonly receiving: { readonly address: string; readonly port: number; readonly title: string } | null;
  /** Newest first. */
  readonly films: readonly ReceivedFilm[];
}

export const getInbox = (): Promise<Inbox> => ask('/api/inbox');

/** Takes the film off the list, as one of that case. */
export async function matchReceived(sha256: string, caseId: string): Promise<void> {
  await ask(`/api/inbox/${sha256}/match`, {
    method: 'POST',
    headers: { 'content-type': JSON_TYPE },
    body: JSON.stringify({ caseId }),
  });
}

/** Takes the film off the list, as one of no case here; its file stays. */
export async function setAsideReceived(sha256: string, reason: string): Promise<void> {
  await ask(`/api/inbox/${sha256}`, {
    method: 'DELETE',
    headers: { 'content-type': JSON_TYPE },
    body: JSON.stringify({ reason }),
  });
}

/** Takes the invented patients out; real ones stay. */
export const beginEmpty = (): Promise<unknown> => ask('/api/empty', { method: 'POST' });
export const resetDemonstration = (): Promise<unknown> => ask('/api/demo/reset', { method: 'POST' });

export async function ask<T>(path: string, request?: RequestInit): Promise<T> {
  const response = await reach(path, request);
  return response.json();
}

/** Sends a JSON body; none where there is nothing to say. */
export const tell = <T>(method: 'POST' | 'PUT' | 'PATCH' | 'DELETE', path: string, body?: object): Promise<T> =>
  ask(path, { method, ...(body && { headers: { 'content-type': JSON_TYPE }, body: JSON.stringify(body) }) });

const SIGN_IN = '/api/session';
const LONGEST_WAIT_MS = 60_000;
/** Says that a page of Bonewright asks: another site's page cannot send it. */
export const PAGE_HEADER = { 'x-bonewright': 'page' };

async function reach(path: string, request: RequestInit = {}): Promise<Response> {
  const headers = { ...request.headers, ...PAGE_HEADER };
  const signal = request.signal ?? AbortSignal.timeout(LONGEST_WAIT_MS);
  const response = await fetch(path, { ...request, headers, signal }).catch(() => {
    throw new Unreachable('the server does not answer');
  });
  if (response.ok) return response;
  const said = await errorText(response);
  if (response.status === 401 && path !== SIGN_IN) {
    for (const listener of signInListeners) listener();
    throw new SignInNeeded('nobody is signed in');
  }
  if (response.status === 429 && path !== SIGN_IN) throw new Unreachable(said);
  if (response.status === 409) throw new Conflict(said);
  if (response.status >= 500) throw new Unreachable(said);
  throw new Refused(response.status, said);
}

async function errorText(response: Response): Promise<string> {
  const plain = `the server answered ${response.status}`;
  try {
    const { error } = await response.json();
    return typeof error === 'string' ? error : plain;
  } catch {
    return plain;
  }
}
