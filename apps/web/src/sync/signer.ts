/** Who signs what is done on this device. */
import { useSyncExternalStore } from 'react';
import { recall, remember } from './device-memory.ts';
import { onSession, signedInName } from './session.ts';

export const NOBODY_NAMED = 'nobody named';

const KEY = 'signer';
const listeners = new Set<() => void>();

/** Whoever is signed in; at a machine without accounts, whoever was typed. */
export const signer = (): string => signedInName() ?? recall(KEY) ?? NOBODY_NAMED;

export function setSigner(name: string): void {
  remember(KEY, name.trim() || null);
  for (const tell of listeners) tell();
}

function subscribe(tell: () => void): () => void {
  listeners.add(tell);
  const leave = onSession(tell);
  return () => {
    listeners.delete(tell);
    leave();
  };
}

export const useSigner = (): string => useSyncExternalStore(subscribe, signer);
