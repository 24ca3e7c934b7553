/** The check of strength behind a margin: its name, its formula, what the formula rests on, and how it is worked out. */
import { RULES, type RuleName } from '@bonewright/construct';
import { useEffect, useState } from 'react';
import { EvidenceLines } from './evidence-lines.tsx';
import { Opens } from './opens.tsx';
import { sectionOf } from './theory-section.ts';

export function GoverningRule({ rule }: { readonly rule: RuleName }) {
  const { name, formula, symbols, evidence } = RULES[rule];
  return (
    <section className="side-section rule">
      <header className="side-head">
        <h2>The check that governs</h2>
      </header>
      <p className="rule-name">{name}</p>
      <p className="rule-formula">{formula}</p>
      <p className="quiet">{symbols}.</p>
      <Opens className="rule-opens" summary="What the formula rests on">
        {() => <EvidenceLines ids={evidence} />}
      </Opens>
      <Opens className="rule-opens" summary="How it is worked out: the theory page, “Strength”">
        {() => <Theory />}
      </Opens>
    </section>
  );
}

/** The page of the project's documentation itself, so that screen and paper cannot differ. */
function Theory() {
  const [text, setText] = useState<string | null>(null);
  useEffect(() => {
    let isWanted = true;
    const read = async () => {
      const page = await import('../../../../../docs/theory/construct.md?raw');
      if (isWanted) setText(sectionOf(page.default, 'Strength'));
    };
    void read();
    return () => {
      isWanted = false;
    };
  }, []);
  return <pre className="rule-theory">{text ?? 'Opening the page'}</pre>;
}
