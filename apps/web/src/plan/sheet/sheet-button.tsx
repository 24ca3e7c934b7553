/** Prints the papers of what is on the screen, and keeps in the record that the theatre sheet was printed. */
import type { CaseState } from '@bonewright/casebook';
import type { Case, Construct } from '@bonewright/construct';
import { useEffect, useRef, useState } from 'react';
import type { Append } from '../../sync/new-event.ts';
import { askSheet, type PaperName } from './ask-sheet.ts';

interface SheetButtonProps {
  readonly state: CaseState;
  readonly patientCase: Case;
  /** What is on the screen when it is pressed. */
  readonly constructNow: () => Construct;
  readonly append: Append;
  /** Puts the construct on the screen into the record if it is not there yet. */
  readonly onKeep: () => void;
}

type Made = { readonly url: string } | { readonly why: string } | 'making' | null;

export function SheetButton({ state, patientCase, constructNow, append, onKeep }: SheetButtonProps) {
  const [made, setMade] = useState<Made>(null);
  const now = useRef(state);
  now.current = state;
  const url = made !== null && typeof made === 'object' && 'url' in made ? made.url : null;
  useEffect(() => () => (url ? URL.revokeObjectURL(url) : undefined), [url]);
  const print = async (paper: PaperName) => {
    onKeep();
    setMade('making');
    try {
      const sheet = URL.createObjectURL(await askSheet(paper, now.current, patientCase, constructNow()));
      setMade({ url: sheet });
      openSheet(sheet, fileName(paper, state));
      const seq = now.current.construct?.seq;
      if (paper === 'theatre' && seq !== undefined)
        append([{ kind: 'sheet-printed', payload: { constructSeq: seq, sha256: null } }]);
    } catch (error) {
      setMade({ why: error instanceof Error ? error.message : String(error) });
    }
  };
  return (
    <div className="plan-sheet">
      <button
        type="button"
        className="button button-main"
        disabled={made === 'making'}
        onClick={() => print('theatre')}
      >
        Sheet 1:1
      </button>
      <p className="plan-papers">
        <button type="button" className="link" disabled={made === 'making'} onClick={() => print('report')}>
          Plan report
        </button>
        <button type="button" className="link" disabled={made === 'making'} onClick={() => print('implants')}>
          Implant record
        </button>
      </p>
      <p className="quiet" role="status">
        {made === 'making' && 'drawing the paper'}
        {url && (
          <a href={url} target="_blank" rel="noreferrer">
            Open it again
          </a>
        )}
        {made !== null && typeof made === 'object' && 'why' in made && made.why}
      </p>
    </div>
  );
}

const FILE_NAMES: Readonly<Record<PaperName, string>> = {
  theatre: 'theatre-sheet',
  report: 'plan-report',
  implants: 'implant-record',
};

const fileName = (paper: PaperName, { patient }: CaseState): string =>
  `${FILE_NAMES[paper]}-${patient?.value.number ?? 'case'}.pdf`;

function openSheet(url: string, name: string): void {
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
}
