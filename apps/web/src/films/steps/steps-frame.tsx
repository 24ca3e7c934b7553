import { type ReactNode, useState } from 'react';

interface StepsFrameProps {
  readonly place: 'first' | 'second';
  readonly title: string;
  /** Everything is done: the steps fold away until they are asked for. */
  readonly isWhole: boolean;
  readonly children: ReactNode;
}

export function StepsFrame({ place, title, isWhole, children }: StepsFrameProps) {
  const [choice, choose] = useState<{ readonly isOpen: boolean; readonly whenWhole: boolean } | null>(null);
  // What the user chose holds until the film becomes whole, or is no longer.
  const isOpen = choice?.whenWhole === isWhole ? choice.isOpen : !isWhole;
  return (
    <details
      className={`steps-frame steps-${place}`}
      open={isOpen}
      onToggle={({ currentTarget }) => {
        if (currentTarget.open !== isOpen) choose({ isOpen: currentTarget.open, whenWhole: isWhole });
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
