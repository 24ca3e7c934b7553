/** The frame of the practice's own pages: medicines, stock. */
import './doses.css';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { SignedBy } from '../people/signed-by.tsx';
import { ThemeSwitch } from '../shell/theme-switch.tsx';
import { useTitle } from '../shell/use-title.ts';

export function PracticePage({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  useTitle(title);
  return (
    <div className="page">
      <header className="head">
        <h1>{title}</h1>
        <div className="head-right">
          <p className="head-state">
            <SignedBy />
          </p>
          <ThemeSwitch />
          <Link href="/" className="button">
            All patients
          </Link>
        </div>
      </header>
      <main id="main" tabIndex={-1} className="doses">
        {children}
      </main>
    </div>
  );
}
