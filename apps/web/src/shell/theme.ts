/** Paper, or the dim theme for film room and theatre; remembered on this device. */
import { useSyncExternalStore } from 'react';
import { recall, remember } from '../sync/device-memory.ts';

export type Theme = 'paper' | 'dim';

const KEY = 'theme';
const listeners = new Set<() => void>();
let theme: Theme = recall(KEY) === 'dim' ? 'dim' : 'paper';

export function setTheme(next: Theme): void {
  theme = next;
  remember(KEY, next === 'dim' ? 'dim' : null);
  showTheme();
  for (const tell of listeners) tell();
}

/** Puts the theme on the page; once before the first drawing. */
export function showTheme(): void {
  document.documentElement.dataset.theme = theme;
}

function subscribe(tell: () => void): () => void {
  listeners.add(tell);
  return () => listeners.delete(tell);
}

export const useTheme = (): Theme => useSyncExternalStore(subscribe, () => theme);
