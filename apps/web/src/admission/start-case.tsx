/** Starts a case. What is typed stays on this device until the case is open. */
import { type SyntheticEvent, useRef, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { Choice } from '../form/choice.tsx';
import { Field } from '../form/field.tsx';
import { ThemeSwitch } from '../shell/theme-switch.tsx';
import { useTitle } from '../shell/use-title.ts';
import { randomId } from '../sync/random-id.ts';
import { startCase } from '../sync/records.ts';
import { useSession } from '../sync/session.ts';
import { NOBODY_NAMED, setSigner, useSigner } from '../sync/signer.ts';
import { useBoard } from '../sync/use-case.ts';
import { useDraft } from '../sync/use-draft.ts';
import { toField } from '../words/time.ts';
import { type CaseDraft, faultsOf, openingOf, readCaseDraft } from './case-draft.ts';
import { AGES, BONES, SEXES, SIDES, SPECIES } from './choices.ts';

export function StartCase() {
  const [, go] = useLocation();
  const { board } = useBoard();
  const signs = useSigner();
  const { person } = useSession();
  const { value: draft, set, clear } = useDraft('start-case', readCaseDraft);
  useTitle('Start a case');
  const [isAsked, setAsked] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const faults = isAsked ? faultsOf(draft) : {};
  const change = (part: Partial<CaseDraft>) => set({ ...draft, ...part });

  const start = (event: SyntheticEvent) => {
    event.preventDefault();
    const opening = openingOf(draft, board?.nextNumber ?? '');
    if (!opening) {
      setAsked(true);
      requestAnimationFrame(() =>
        form.current?.querySelector<HTMLElement>('[aria-invalid], .field:has(.field-why) input')?.focus(),
      );
      return;
    }
    const caseId = randomId();
    startCase(caseId, [opening]);
    clear();
    go(`/case/${caseId}/films`);
  };

  return (
    <div className="page">
      <header className="head">
        <h1>Start a case</h1>
        <div className="head-right">
          <ThemeSwitch />
          <Link href="/" className="button">
            All patients
          </Link>
        </div>
      </header>
      <main id="main" tabIndex={-1}>
        <form ref={form} className="start-form" noValidate onSubmit={start}>
          <Field
            label="Species"
            value={draft.species}
            onChange={(species) => change({ species })}
            options={SPECIES}
            why={faults.species ?? null}
            help="As you would say it. Wild or tame makes no difference here."
          />
          <Field
            label="Case number"
            value={draft.number}
            onChange={(number) => change({ number })}
            help={board ? `Left empty: ${board.nextNumber}` : 'Left empty: the next free one'}
          />
          <div className="start-pair">
            <Field
              label="Mass"
              unit="g"
              inputMode="decimal"
              value={draft.mass}
              onChange={(mass) => change({ mass, weighedAt: draft.weighedAt || toField(new Date()) })}
              why={faults.mass ?? null}
              help="Can be given later; no plan is made without it."
            />
            <Field
              label="Weighed at"
              type="datetime-local"
              value={draft.weighedAt}
              onChange={(weighedAt) => change({ weighedAt })}
              why={faults.weighedAt ?? null}
            />
          </div>
          <Choice
            label="Age class"
            options={AGES}
            value={draft.ageClass}
            onChange={(ageClass) => change({ ageClass })}
          />
          <Choice label="Sex" options={SEXES} value={draft.sex} onChange={(sex) => change({ sex })} />
          <Field
            label="Broken bone"
            value={draft.bone}
            onChange={(bone) => change({ bone })}
            options={BONES}
            why={faults.bone ?? null}
          />
          <Choice
            label="Side"
            options={SIDES}
            value={draft.side}
            onChange={(side) => change({ side })}
            why={faults.side ?? null}
          />
          <Field
            label="Name in the ward"
            value={draft.name}
            onChange={(name) => change({ name })}
            help="Where it has one."
          />
          {person === null && (
            <Field
              label="Signed by"
              value={signs === NOBODY_NAMED ? '' : signs}
              onChange={setSigner}
              help={signs === NOBODY_NAMED ? 'Left empty, the record says: nobody named.' : 'Stays on this device.'}
            />
          )}
          <p className="start-foot">
            <button type="submit" className="button button-main">
              Start the case
            </button>
            <span className="quiet">Films come next. What is typed here is kept on this device meanwhile.</span>
          </p>
        </form>
      </main>
    </div>
  );
}
