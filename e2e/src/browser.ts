/** Debian's Chromium, driven by Playwright: one browser for a file, a fresh context for a test. */
import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export const DESK = { width: 1440, height: 900 };
export const TABLET = { width: 1024, height: 768 };
export const PHONE = { width: 390, height: 844 };

/** Launches the browser that `npm test` found, or the usual one. */
export function launch(): Promise<Browser> {
  const executablePath = process.env.BONEWRIGHT_CHROMIUM ?? ['/usr/bin/chromium'].find((p) => existsSync(p));
  if (!executablePath) throw new Error('no Chromium found: run npm test, which installs it');
  return chromium.launch({ executablePath, args: FLAGS });
}
