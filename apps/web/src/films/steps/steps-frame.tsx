import { type ReactNode, useState } from 'react';

interface StepsFrameProps {
  readonly place: 'first' | 'second';
  readonly title: string;
  /** Everything is done: the steps fold away until they are asked for. */
  readonly isWhole: boolean;
  /** The film to be worked on now. */
  readonly isCurrent: boolean;
  readonly children: ReactNode;
}

export function StepsFrame({ place, title, isWhole, isCurrent, children }: StepsFrameProps) {
  const [choice, choose] = useState<{ readonly isOpen: boolean; readonly whenCurrent: boolean } | null>(null);
  // What the user chose holds until the work moves on to the other film, or back.
  const isOpen = choice?.whenCurrent === isCurrent ? choice.isOpen : isCurrent;
  return (
    <details
      className={`steps-frame steps-${place}`}
      open={isOpen}
      onToggle={({ currentTarget }) => {
        if (currentTarget.open !== isOpen) choose({ isOpen: currentTarget.open, whenCurrent: isCurrent });
      }}
    >
      <summary>
        <h3>{title}</h3>
        <span className="quiet">{isWhole ? 'read; change' : 'to do'}</span>
      </summary>
      {children}
    </details>
  );
}
