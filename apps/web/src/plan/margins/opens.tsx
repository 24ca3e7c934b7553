/** Something that opens in place; what is inside is made only when it is open. */
import { type ReactNode, useState } from 'react';

interface OpensProps {
  readonly className: string;
  readonly summary: ReactNode;
  readonly children: () => ReactNode;
}

export function Opens({ className, summary, children }: OpensProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details className={className} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{summary}</summary>
      {isOpen && children()}
    </details>
  );
}
