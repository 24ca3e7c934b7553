/** Small texts that this device remembers: theme, signer, half-typed forms. A browser that forbids it only forgets. */
const PREFIX = 'bonewright.';

export function recall(key: string): string | null {
  try {
    return localStorage.getItem(PREFIX + key);
  } catch {
    return null;
  }
}

/** Null forgets. */
export function remember(key: string, text: string | null): void {
  try {
    if (text === null) localStorage.removeItem(PREFIX + key);
    else localStorage.setItem(PREFIX + key, text);
  } catch {
    // Storage is full or forbidden: what is on the screen stays on the screen.
  }
}
