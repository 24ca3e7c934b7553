/** Paper, or the dim theme for film room and theatre; remembered on this device. */
import { useEffect, useSyncExternalStore } from 'react';
import { recall, remember } from '../sync/device-memory.ts';

export type Theme = 'paper' | 'dim';

const KEY = 'theme';
const listeners = new Set<() => void>();
let theme: Theme = recall(KEY) === 'dim' ? 'dim' : 'paper';

export function setTheme(next: Theme): void {
  remember(KEY, next === 'dim' ? 'dim' : null);
  become(next);
}

function become(next: Theme): void {
  theme = next;
  showTheme();
  for (const tell of listeners) tell();
}

/** A page for a dark room opens dim; the theme of this device comes back when it is left. */
export function useDimRoom(): void {
  useEffect(() => {
    become('dim');
    return () => become(recall(KEY) === 'dim' ? 'dim' : 'paper');
  }, []);
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
