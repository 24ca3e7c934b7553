/** Who is signed in. Remembered on this device, so that the pages open while the server cannot be reached. */
import { type Role, THIS_MACHINE } from '@bonewright/casebook';
import { useSyncExternalStore } from 'react';
import { ask, onSignInNeeded, tell, Unreachable } from './api.ts';
import { database } from './database.ts';
import { recall, remember } from './device-memory.ts';

export interface SignedInPerson {
  readonly name: string;
  readonly role: Role;
  readonly isOwner: boolean;
  readonly mustChoosePassword: boolean;
  readonly isLink: boolean;
}

export interface SessionState {
  /** `machine`: no accounts here. `ended`: the page stays, and asks to sign in again. */
  readonly kind: 'looking' | 'machine' | 'person' | 'signed-out' | 'ended';
  /** Also when the session has ended: whoever was signed in. */
  readonly person: SignedInPerson | null;
}

const KEY = 'session';
let session: SessionState = { kind: 'looking', person: null };
const listeners = new Set<() => void>();

export function onSession(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export const useSession = (): SessionState => useSyncExternalStore(onSession, () => session);
/** What whoever works here may do; at a machine without accounts everything. */
export const useRole = (): Role => useSession().person?.role ?? THIS_MACHINE.role;
export const signedInName = (): string | null => session.person?.name ?? null;
/** Whether cases may be read and recorded from here now. */
export const mayWork = (): boolean =>
  session.kind === 'machine' || (session.kind === 'person' && session.person?.mustChoosePassword !== true);

onSignInNeeded(() => {
  if (session.kind === 'person') become({ ...session, kind: 'ended' });
});

/** Asks the server who is signed in. */
export async function startSession(): Promise<void> {
  try {
    const said = await ask<{ accounts: boolean; person: SignedInPerson | null }>('/api/session');
    const person = said.accounts ? said.person : null;
    remember(KEY, person && JSON.stringify(person));
    if (person) become({ kind: 'person', person });
    else become({ kind: said.accounts ? 'signed-out' : 'machine', person: null });
  } catch (error) {
    if (!(error instanceof Unreachable)) throw error;
    const person = remembered();
    become({ kind: person ? 'person' : 'machine', person });
  }
}

function remembered(): SignedInPerson | null {
  const kept = recall(KEY);
  return kept === null ? null : JSON.parse(kept);
}

/** Throws Refused with the reason in words. */
export async function signIn(name: string, password: string): Promise<void> {
  await tell('POST', '/api/session', { name, password });
  await startSession();
}

/** Also takes off this device what the server has said; what waits to be sent stays. */
export async function signOut(): Promise<void> {
  await tell('DELETE', '/api/session');
  remember(KEY, null);
  const db = await database().catch(() => null);
  for (const table of ['events', 'board'] as const) await db?.clear(table);
  for (const file of (await db?.getAll('files')) ?? []) if (file.isSent) await db?.delete('files', file.sha256);
  location.assign('/');
}

function become(next: SessionState): void {
  session = next;
  for (const listener of listeners) listener();
}
