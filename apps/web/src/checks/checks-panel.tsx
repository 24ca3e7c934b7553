/** Three checklists: each line done, or not done and why. Nothing waits for them; what was left open stands in the record. */
import './checks.css';
import { type CaseState, CHECKLISTS, type Checklist, mayRecord } from '@bonewright/casebook';
import { CHECK_ITEMS, CHECKLIST_SOURCE, type CheckItem } from '@bonewright/ward';
import { useState } from 'react';
import { VerdictWord } from '../drawing/verdict-mark.tsx';
import { ReasonDialog } from '../form/reason-dialog.tsx';
import type { Append } from '../sync/new-event.ts';
import { useRole } from '../sync/session.ts';
import { capital } from '../words/patient.ts';
import { shortMoment } from '../words/time.ts';

interface ChecksPanelProps {
  readonly state: CaseState;
  readonly append: Append;
  readonly onCounts: () => void;
}

type Check = CaseState['chart']['checks'][number];

export function ChecksPanel({ state, append, onCounts }: ChecksPanelProps) {
  const [open, setOpen] = useState<{ readonly list: Checklist; readonly check: CheckItem } | null>(null);
  const tick = (list: Checklist, item: string, isDone: boolean, note: string) =>
    append([{ kind: 'check-ticked', payload: { list, item, isDone, note } }]);
  return (
    <div className="checks">
      {CHECKLISTS.map((list) => (
        <OneList
          key={list}
          {...{ state, list }}
          onDone={(item) => tick(list, item, true, '')}
          onNot={(check) => setOpen({ list, check })}
        />
      ))}
      <p className="checks-foot">
        <button type="button" className="button" onClick={onCounts}>
          To the counts
        </button>
        <span className="caption">{CHECKLIST_SOURCE}</span>
      </p>
      {open && (
        <ReasonDialog
          title={`Not done: ${open.check.words}`}
          common={['not needed for this patient', 'no time: emergency']}
          actions={[
            {
              word: 'Not done',
              act: (why) => {
                tick(open.list, open.check.item, false, why);
                setOpen(null);
              },
            },
          ]}
          onClose={() => setOpen(null)}
        />
      )}
    </div>
  );
}

interface OneListProps {
  readonly state: CaseState;
  readonly list: Checklist;
  readonly onDone: (item: string) => void;
  readonly onNot: (check: CheckItem) => void;
}

function OneList({ state, list, onDone, onNot }: OneListProps) {
  const mayTick = mayRecord(useRole(), 'check-ticked');
  const items: readonly CheckItem[] = CHECK_ITEMS[list];
  const said = state.chart.checks.filter(({ value }) => value.list === list);
  const answered = items.filter(({ item }) => said.some(({ value }) => value.item === item)).length;
  return (
    <section aria-label={capital(list)} className="checks-list">
      <h3>
        {capital(list)}{' '}
        <span>
          {answered} of {items.length}
        </span>
      </h3>
      <ul>
        {items.map((check) => {
          const found = said.find(({ value }) => value.item === check.item);
          return (
            <li key={check.item}>
              <p>{check.words}</p>
              <Answer check={found} />
              {mayTick && (
                <span className="checks-buttons">
                  <button
                    type="button"
                    className="button"
                    aria-pressed={found?.value.isDone === true}
                    aria-label={`Done: ${check.words}`}
                    onClick={() => onDone(check.item)}
                  >
                    Done
                  </button>
                  <button
                    type="button"
                    className="button"
                    aria-pressed={found?.value.isDone === false}
                    aria-label={`Not done: ${check.words}`}
                    onClick={() => onNot(check)}
                  >
                    Not done
                  </button>
                </span>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function Answer({ check }: { readonly check: Check | undefined }) {
  if (!check) return <span className="quiet">open</span>;
  const { isDone, note } = check.value;
  return (
    <span className="checks-answer">
      <VerdictWord verdict={isDone ? 'good' : 'watch'} word={isDone ? 'done' : 'not done'} />
      <span className="caption">{[note, check.by, shortMoment(check.at)].filter(Boolean).join(', ')}</span>
    </span>
  );
}
