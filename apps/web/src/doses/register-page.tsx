/** The controlled-drug register: a page for each drug, strength and form, with the balance after each entry. Entries are never changed. */
import { drugOf, drugs } from '@bonewright/evidence';
import { type RegisterPage as Page, plain, registerRows } from '@bonewright/ward';
import { usePractice } from '../sync/use-case.ts';
import { moment } from '../words/time.ts';
import { PracticePage } from './practice-page.tsx';
import { RegisterForm } from './register-form.tsx';

const CONTROLLED = drugs.filter(({ schedules = [] }) => schedules.length > 0);

export function RegisterPage() {
  const { register } = usePractice().state.medicines;
  const pages = registerRows(register, -new Date().getTimezoneOffset());
  return (
    <PracticePage title="Controlled drugs">
      <p className="lead">
        Entries are never changed or taken out: a correction is an entry of its own. Whether this register is enough
        where you are is your regulator's to say.
      </p>
      {pages.length === 0 && <p className="quiet">No entry yet. The first one begins a page.</p>}
      {pages.map((page) => (
        <RegisterTable key={`${page.drug} ${page.perMl} ${page.form}`} page={page} />
      ))}
      <RegisterForm pages={pages} />
      <section aria-labelledby="schedules-title" className="dose-form">
        <h2 id="schedules-title">Which schedule, where you are?</h2>
        <p>Read in these sources, some of which are out of date. Ask your regulator.</p>
        <ul className="dose-remarks">
          {CONTROLLED.map(({ id, name }) => (
            <li key={id}>
              <b>{name}</b>: <Schedules drug={id} />
            </li>
          ))}
        </ul>
      </section>
    </PracticePage>
  );
}

function Schedules({ drug }: { readonly drug: string }) {
  const schedules = drugOf(drug)?.schedules ?? [];
  return schedules.map(({ place, says, source, status, stale }) => (
    <span key={place}>
      {place}: {says}? ({source.title}
      {status === 'memory' && ', unverified'}) {stale}{' '}
    </span>
  ));
}

function RegisterTable({ page }: { readonly page: Page }) {
  const { drug, perMl, unit, form, balanceMl, rows } = page;
  const title = `${drug} ${plain(perMl)} ${unit}/ml, ${form}`;
  return (
    <div className="register-page">
      <h2>{title}</h2>
      <p>
        Balance <b>{plain(balanceMl)} ml</b>
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled with the keys */}
      <section className="register-scroll" tabIndex={0} aria-label={`Entries of ${title}`}>
        <table className="register">
          <thead>
            <tr>
              {['when', 'what', 'in, ml', 'out, ml', 'balance, ml', 'from or to', 'by', 'witness', 'note'].map(
                (word) => (
                  <th key={word} scope="col">
                    {word}
                  </th>
                ),
              )}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ entry, by, inMl, outMl, balanceMl: after, remarks }) => (
              <tr key={entry.entryId}>
                <td>{moment(entry.at)}</td>
                <td>{entry.kind}</td>
                <td>{inMl === null ? '' : plain(inMl)}</td>
                <td>{outMl === null ? '' : plain(outMl)}</td>
                <td>{plain(after)}</td>
                <td>{entry.party}</td>
                <td>{by}</td>
                <td>{entry.witness ?? ''}</td>
                <td>{[entry.note, ...remarks].filter(Boolean).join('; ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </div>
  );
}
