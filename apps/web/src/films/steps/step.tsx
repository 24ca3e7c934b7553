import type { ReactNode } from 'react';

interface StepProps {
  readonly name: string;
  readonly isDone: boolean;
  readonly isOptional?: boolean;
  readonly children: ReactNode;
}

/** One thing to do on a film: done is a tick in a disc, open a ring. */
export function Step({ name, isDone, isOptional = false, children }: StepProps) {
  return (
    <li className="step">
      <span className="step-name">
        <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
          {isDone ? (
            <>
              <circle cx="9" cy="9" r="8" fill="var(--moss)" />
              <path d="M5 9.5L8 12.5L13 6" fill="none" stroke="var(--onmoss)" strokeWidth="2" />
            </>
          ) : (
            <circle
              cx="9"
              cy="9"
              r="7.2"
              fill="none"
              stroke="var(--ink2)"
              strokeWidth="1.6"
              strokeDasharray={isOptional ? '3 2.5' : undefined}
            />
          )}
        </svg>
        {name}
        {isDone && <span className="sr-only">, done</span>}
        {isOptional && <span className="sr-only">, optional</span>}
      </span>
      <div className="step-body">{children}</div>
    </li>
  );
}
