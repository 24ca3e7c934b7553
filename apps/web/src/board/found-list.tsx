/** What was found: the patient, and the words in which it stands. */
import type { KeyboardEvent, ReactNode } from 'react';
import { Link } from 'wouter';
import type { Found } from '../sync/api.ts';
import { capital } from '../words/patient.ts';
import { marked, shortened } from './marked-words.ts';
import type { FoundSnapshot } from './use-found.ts';

export function FoundList({ found, trouble, isAsking, question }: FoundSnapshot & { readonly question: string }) {
  return (
    <section aria-label="Found">
      <p className="found-count" role="status">
        {trouble ?? countWords(found, isAsking, question)}
      </p>
      <ul className="found" onKeyDown={moveByArrows}>
        {found.map((each) => (
          <FoundRow key={each.row.caseId} {...each} />
        ))}
      </ul>
    </section>
  );
}

const MOST = 20;

function countWords(found: readonly Found[], isAsking: boolean, question: string): string {
  if (isAsking && found.length === 0) return 'Looking.';
  if (found.length === 0)
    return `Nothing holds all of “${question.trim()}”. Fewer words or only their beginnings find more.`;
  if (found.length === 1) return '1 patient found.';
  return found.length < MOST
    ? `${found.length} patients found.`
    : `The ${MOST} patients changed last; more words find fewer.`;
}

function FoundRow({ row, line, asked }: Found) {
  return (
    <li className="found-row">
      <p>
        <Link href={`/case/${row.caseId}/${row.stage}`} className="found-link">
          <Marked text={`${capital(row.species)}${row.name && `, ${row.name}`}, case ${row.number}`} asked={asked} />
        </Link>
        <span className="caption">
          {' '}
          {row.ended ? 'ended' : row.stage}
          {row.demonstration && ' · Demonstration'}
        </span>
      </p>
      {line && (
        <p className="found-line">
          <Marked text={shortened(line.text, asked)} asked={asked} />
        </p>
      )}
    </li>
  );
}

function Marked({ text, asked }: { readonly text: string; readonly asked: readonly string[] }): ReactNode {
  return marked(text, asked).map(({ part, isFound }, i) => (isFound ? <mark key={i}>{part}</mark> : part));
}

function moveByArrows(event: KeyboardEvent<HTMLElement>): void {
  const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  if (step === undefined) return;
  const links = [...event.currentTarget.querySelectorAll<HTMLElement>('.found-link')];
  const here = document.activeElement;
  const at = here instanceof HTMLElement ? links.indexOf(here) : -1;
  event.preventDefault();
  const next = links[at + step];
  if (next) next.focus();
  else if (step < 0) document.querySelector<HTMLElement>('.find input')?.focus();
}
