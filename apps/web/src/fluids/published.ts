import type { Entry } from '@bonewright/evidence';

/** A published range in words, with whose it is and how far it was checked. */
export function published({ low, high, unit, appliesTo, source, status }: Entry): string {
  const range = low === high ? `${low}` : `${low} to ${high}`;
  const checked = status === 'seen' ? 'seen' : status === 'memory' ? 'from memory, not checked' : status;
  return `${range} ${unit === '1' ? 'times' : unit}: ${appliesTo} (${source.title}; ${checked})`;
}
