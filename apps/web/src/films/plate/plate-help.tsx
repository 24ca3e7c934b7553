/** Below the plates: what the keys do, and what the lines mean. */

export function KeysHelp() {
  return (
    <p className="plate-help plate-help-keys">
      <span>
        <kbd>1</kbd> to <kbd>4</kbd> place again
      </span>
      <span>
        <kbd>Space</kbd> hides the marks
      </span>
      <span>
        arrows, <kbd>Enter</kbd> mark without a mouse, <kbd>Esc</kbd> back
      </span>
      <span>
        <kbd>+</kbd> <kbd>−</kbd> <kbd>0</kbd> nearer, farther, whole
      </span>
      <span>
        <kbd>L</kbd> held magnifies, <kbd>R</kbd> turns, <kbd>H</kbd> flips
      </span>
    </p>
  );
}

const LINES = [
  ['wall found', 'var(--mint)', undefined],
  ['found, less sure', 'var(--mint)', '3 3'],
  ['fracture', 'var(--coral)', '7 4'],
  ['axis', 'var(--chalk)', '9 3 2 3'],
] as const;

export function Legend() {
  return (
    <p className="plate-help">
      <LineSamples lines={LINES} />
    </p>
  );
}

type LineSample = readonly [word: string, colour: string, dash: string | undefined];

/** What each line on a plate means, as it is drawn there. */
export function LineSamples({ lines }: { readonly lines: readonly LineSample[] }) {
  return lines.map(([word, colour, dash]) => (
    <span key={word}>
      <svg width="30" height="12" aria-hidden="true">
        <rect width="30" height="12" fill="var(--surround)" />
        <path d="M3 6H27" stroke={colour} strokeWidth="1.75" strokeDasharray={dash} />
      </svg>
      {word}
    </span>
  ));
}
