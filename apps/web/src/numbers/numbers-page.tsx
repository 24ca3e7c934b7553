/** About these numbers: every constant, curve, dose, series and question that the program knows, with its source. */
import './numbers.css';
import { useEffect, useMemo, useState } from 'react';
import { PracticePage } from '../doses/practice-page.tsx';
import { Field } from '../form/field.tsx';
import { capital } from '../words/patient.ts';
import { KNOWN, numberAddress, sourceWords } from './entry-words.ts';
import { findNumbers, type NumberLine, nameOfNumber, numberLines, SUBJECTS } from './numbers.ts';

export function NumbersPage() {
  const [question, setQuestion] = useState('');
  const asked = useAsked(() => setQuestion(''));
  const found = useMemo(() => findNumbers(question), [question]);
  return (
    <PracticePage title="About these numbers">
      <p className="lead">
        Where every figure of this program comes from, and whether anybody has read it there. Nothing here is a dose or
        a rule for your patient.
      </p>
      <div className="numbers-find">
        <Field label="Find" value={question} onChange={setQuestion} />
        <p className="quiet" role="status">
          {question.trim() === '' ? `${numberLines.length} lines` : `${found.length} of ${numberLines.length} lines`}
        </p>
      </div>
      {found.length === 0 && (
        <p>No line holds all of these words. Try fewer, such as a species, a drug, “steel” or “from memory”.</p>
      )}
      {SUBJECTS.map((subject) => (
        <Lines key={subject} subject={subject} lines={found.filter((line) => line.subject === subject)} asked={asked} />
      ))}
    </PracticePage>
  );
}

interface LinesProps {
  readonly subject: string;
  readonly lines: readonly NumberLine[];
  readonly asked: string;
}

function Lines({ subject, lines, asked }: LinesProps) {
  if (lines.length === 0) return null;
  return (
    <section aria-label={subject}>
      <h2>
        {subject} <span className="quiet">{lines.length}</span>
      </h2>
      <ul className="numbers">
        {lines.map((line) => (
          <Line key={line.id} line={line} isAsked={line.id === asked} />
        ))}
      </ul>
    </section>
  );
}

function Line({ line, isAsked }: { readonly line: NumberLine; readonly isAsked: boolean }) {
  const { id, name, figure, range, says, source, status, conflicts } = line;
  return (
    <li id={id} tabIndex={-1} className={isAsked ? 'number number-asked' : 'number'}>
      <h3>{capital(name)}</h3>
      <p className="number-figure">
        {figure && <strong>{figure}</strong>} <span className="quiet">{range}</span>
      </p>
      <div className="number-says">
        <p>{says.map(sentence).join(' ')}</p>
        {conflicts && (
          <p>
            Others disagree:{' '}
            {conflicts.ids.map((other) => (
              <a key={other} href={numberAddress(other)}>
                {nameOfNumber(other)}
              </a>
            ))}
            . {sentence(conflicts.why)}
          </p>
        )}
        <p className="quiet">
          {sentence(sourceWords(source))}{' '}
          <a href={numberAddress(id)} className="number-id" aria-label={`Address of ${name}, ${id}`}>
            {id}
          </a>
        </p>
      </div>
      <p className={`number-known number-${status.replace(' ', '-')}`}>{KNOWN[status]}</p>
    </li>
  );
}

const sentence = (words: string): string => `${capital(words).replace(/\.$/, '')}.`;

const idInAddress = (): string => decodeURIComponent(location.hash.slice(1));

/** The line that the address names, brought into sight; a search that hides it is emptied first. */
function useAsked(showAll: () => void): string {
  const [asked, setAsked] = useState(idInAddress);
  useEffect(() => {
    const onHash = (): void => {
      showAll();
      setAsked(idInAddress());
    };
    addEventListener('hashchange', onHash);
    return () => removeEventListener('hashchange', onHash);
  });
  useEffect(() => {
    const line = asked === '' ? null : document.getElementById(asked);
    line?.scrollIntoView({ block: 'center' });
    line?.focus({ preventScroll: true });
  }, [asked]);
  return asked;
}
