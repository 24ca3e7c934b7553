/** What must be known before a plan can be made. */
import { Link } from 'wouter';

interface MissingProps {
  readonly caseId: string;
  readonly sentences: readonly string[];
}

export function Missing({ caseId, sentences }: MissingProps) {
  return (
    <section className="plan-stage plan-missing" aria-labelledby="plan-missing-title">
      <h2 id="plan-missing-title">A plan needs a measured bone</h2>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <Link href={`/case/${caseId}/films`} className="button button-main">
        To the films
      </Link>
    </section>
  );
}
