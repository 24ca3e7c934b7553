/** Who signs what is done on this device. */
import { useSyncExternalStore } from 'react';
import { recall, remember } from './device-memory.ts';

export const NOBODY_NAMED = 'nobody named';

const KEY = 'signer';
const listeners = new Set<() => void>();

export const signer = (): string => recall(KEY) ?? NOBODY_NAMED;

export function setSigner(name: string): void {
  remember(KEY, name.trim() || null);
  for (const tell of listeners) tell();
}

function subscribe(tell: () => void): () => void {
  listeners.add(tell);
  return () => listeners.delete(tell);
}

export const useSigner = (): string => useSyncExternalStore(subscribe, signer);
