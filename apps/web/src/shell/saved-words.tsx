/** Whether what was done is safe, in words. */
import type { Saved } from '../sync/synced-record.ts';
import { shortMoment } from '../words/time.ts';

const entries = (count: number): string => (count === 1 ? '1 entry waits' : `${count} entries wait`);

export function savedWords(saved: Saved): string {
  switch (saved.kind) {
    case 'saved':
      return saved.at === null ? 'nothing to save' : `${shortMoment(saved.at)}, saved`;
    case 'sending':
      return 'saving';
    case 'kept':
      return `kept on this tablet, ${entries(saved.count)}`;
    case 'in-memory':
      return `not kept: leave this page open, ${entries(saved.count)}`;
  }
}

export function SavedWords({ saved }: { readonly saved: Saved }) {
  return (
    <span className="saved-words" role="status">
      {savedWords(saved)}
    </span>
  );
}
