/** Which entries were made in this tab, also before it was loaded again: work that follows from them is this tab's to do. */
const PREFIX = 'bonewright.own.';
const MOST = 100;

export function ownEntries(caseId: string): Set<string> {
  try {
    return new Set((sessionStorage.getItem(PREFIX + caseId) ?? '').split(' ').filter(Boolean));
  } catch {
    return new Set();
  }
}

export function keepOwnEntries(caseId: string, ids: ReadonlySet<string>): void {
  try {
    sessionStorage.setItem(PREFIX + caseId, [...ids].slice(-MOST).join(' '));
  } catch {
    // Forbidden or full: after a reload the work that follows is offered instead of done.
  }
}
