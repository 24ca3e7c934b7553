/** When to ring, and the number; always there, whatever is written above. */
import type { CaseState } from '@bonewright/casebook';
import { VerdictMark } from '../drawing/verdict-mark.tsx';

/** Where no vet wrote any: common practice, no source. */
const USUAL = ['a pin moves', 'the leg hangs or swells', 'nothing was eaten for 12 hours'];

export function RingUs({ state }: { readonly state: CaseState }) {
  const written = state.care.aftercare?.value;
  const lines = written && written.ringWhen.length > 0 ? written.ringWhen : USUAL;
  const phone = written?.phone ?? '';
  return (
    <section aria-labelledby="ring-title" className="carer-ring">
      <h2 id="ring-title">
        <VerdictMark verdict="stop" />
        Ring us now if
      </h2>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {phone ? (
        <a className="button" href={`tel:${phone.replaceAll(/[^\d+]/g, '')}`}>
          Ring {phone}
        </a>
      ) : (
        <p>No number is written here. It stands on the paper you were given.</p>
      )}
    </section>
  );
}
