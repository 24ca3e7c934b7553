import type { DescriptionDraft } from './description-draft.ts';

const TEXTS: readonly string[] = [
  'from',
  'to',
  'gap',
  'obliquity',
  'fissures',
  'keepOutProximal',
  'keepOutDistal',
  'softProximal',
  'softDistal',
] satisfies (keyof DescriptionDraft)[];

/** Only the fields somebody typed in; anything unreadable counts as not typed. */
export function readDescription(kept: unknown): Partial<DescriptionDraft> {
  if (typeof kept !== 'object' || kept === null) return {};
  const said = Object.entries(kept);
  const texts = said.filter(([key, value]) => TEXTS.includes(key) && typeof value === 'string');
  const comminuted = said.find(([key]) => key === 'comminuted')?.[1];
  return { ...Object.fromEntries(texts), ...(typeof comminuted === 'boolean' ? { comminuted } : {}) };
}
