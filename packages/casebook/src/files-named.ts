/** Files that an event rests on: they are kept by hash before it is recorded. */
import { isKnown, type RecordedEvent } from './events.ts';

export interface NamedFile {
  readonly sha256: string;
  readonly fileName: string;
}

/** The film or photograph that came with an event; none for most. */
export function filesNamed(event: RecordedEvent): NamedFile[] {
  if (!isKnown(event)) return [];
  const { kind, payload } = event;
  if (kind === 'film-added') return [{ sha256: payload.sha256, fileName: payload.fileName }];
  if (kind === 'photo-added') return [payload.photo];
  if (kind === 'pin-site-seen' && payload.photo) return [payload.photo];
  return [];
}
