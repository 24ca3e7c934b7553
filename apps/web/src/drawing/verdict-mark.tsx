/** The three verdicts by shape first: ring, half-filled diamond, barred square. The word stands beside, always. */
import type { Verdict } from '@bonewright/construct';

const COLOUR: Record<Verdict, string> = { good: 'var(--moss)', watch: 'var(--ochre)', stop: 'var(--brick)' };

export function VerdictShape({ verdict }: { readonly verdict: Verdict }) {
  if (verdict === 'good') return <circle cx="8" cy="8" r="5" fill="none" stroke={COLOUR.good} strokeWidth="2" />;
  if (verdict === 'watch')
    return (
      <g stroke={COLOUR.watch} strokeWidth="1.5" strokeLinejoin="round">
        <path d="M8 2L14 8L8 14L2 8Z" fill="none" />
        <path d="M2 8H14L8 14Z" fill={COLOUR.watch} />
      </g>
    );
  return <path d="M2.5 2.5H13.5V13.5H2.5ZM4.5 7V9H11.5V7Z" fill={COLOUR.stop} fillRule="evenodd" />;
}

export function VerdictMark({ verdict }: { readonly verdict: Verdict }) {
  return (
    <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
      <VerdictShape verdict={verdict} />
    </svg>
  );
}

/** Mark and word together. */
export function VerdictWord({ verdict, word }: { readonly verdict: Verdict; readonly word?: string }) {
  return (
    <span className={`verdict verdict-${verdict}`}>
      <VerdictMark verdict={verdict} />
      {word ?? verdict}
    </span>
  );
}
