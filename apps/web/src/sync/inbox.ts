/** Films that X-ray machines sent and that wait for their patient, as the server last said. */
import { useSyncExternalStore } from 'react';
import { getInbox, type Inbox, Refused, Unreachable } from './api.ts';

const NOTHING: Inbox = { receiving: null, films: [] };

let inbox = NOTHING;
const listeners = new Set<() => void>();

/** Where the server does not answer, what it said before stands. */
export async function refreshInbox(): Promise<void> {
  try {
    inbox = await getInbox();
  } catch (error) {
    if (!(error instanceof Unreachable || error instanceof Refused)) throw error;
  }
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export const useInbox = (): Inbox => useSyncExternalStore(subscribe, () => inbox);
