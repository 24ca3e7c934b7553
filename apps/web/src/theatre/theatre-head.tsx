/** Large title at the left, the sides of the stage at the right. */
import type { ReactNode } from 'react';

export function TheatreHead({ title, nav }: { readonly title: string; readonly nav: ReactNode }) {
  return (
    <header className="theatre-head">
      <h2>{title}</h2>
      {nav}
    </header>
  );
}
