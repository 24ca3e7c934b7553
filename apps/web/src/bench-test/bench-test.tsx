/** Bench test of one's own putty: a moulded bar on two supports, weights hung from its middle, each sag read. */
import './bench-test.css';
import type { BenchResult } from '@bonewright/construct';
import { type ReactNode, useEffect, useId, useRef } from 'react';
import { VerdictMark } from '../drawing/verdict-mark.tsx';
import { Choice } from '../form/choice.tsx';
import { Field, FieldWhy } from '../form/field.tsx';
import { threeFigures } from '../plan/words.ts';
import { useDraft } from '../sync/use-draft.ts';
import { BarDrawing } from './bar-drawing.tsx';
import { answerOf, type BenchDraft, readBenchDraft } from './draft.ts';

interface BenchTestProps {
  /** What was tested. */
  readonly children: ReactNode;
  /** Names what is half typed. */
  readonly draftKey: string;
  readonly onFound: (figures: BenchFigures) => void;
  readonly onClose: () => void;
}

const SHAPES = [
  ['round', 'round bar'],
  ['flat', 'flat bar'],
] as const;

export function BenchTest({ children, draftKey, onFound, onClose }: BenchTestProps) {
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const draft = useDraft(draftKey, readBenchDraft);
  const answer = answerOf(draft.value);
  const set = (change: Partial<BenchDraft>) => draft.set({ ...draft.value, ...change });
  const use = () => {
    if (!answer.result) return;
    onFound(figuresOf(answer.result));
    draft.clear();
    dialog.current?.close();
  };
  return (
    <dialog ref={dialog} className="dialog bench-test" aria-labelledby={`${id}-title`} onClose={onClose}>
      <header className="bench-head">
        <h2 id={`${id}-title`}>Bench test of the putty</h2>
        <button type="button" className="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </header>
      <p>
        Mould a straight bar, let it set as in use, lay it on two supports, hang weights from its middle and read how
        much further it sags with each. Then hang more until it breaks, over something soft and with eyes covered.
      </p>
      <BarDrawing shape={draft.value.shape} />
      {children}
      <Bar draft={draft.value} set={set} />
      <Hung draft={draft.value} set={set} />
      <div className="bench-row">
        <Reading label="Broke under" unit="g" of={draft.value} name="breakingG" set={set} />
        <Reading label="That weight is known to ±" unit="g" of={draft.value} name="breakingSdG" set={set} />
      </div>
      <p className="caption">Leave both empty where it was not broken: then only the modulus is found.</p>
      {answer.why && <FieldWhy why={answer.why} />}
      <Found {...answer} />
      <p className="dialog-foot">
        <button type="button" className="button button-main" disabled={!answer.result} onClick={use}>
          Use these figures from now on
        </button>
        {!answer.result && !answer.why && <span className="quiet">The figures stand here when the readings do.</span>}
      </p>
    </dialog>
  );
}

export type BenchFigures = ReturnType<typeof figuresOf>;

const figuresOf = ({ youngMPa, strengthMPa }: BenchResult) => ({
  youngMPa,
  yieldMPa: strengthMPa,
  testedAt: new Date().toISOString(),
});

interface PartProps {
  readonly draft: BenchDraft;
  readonly set: (change: Partial<BenchDraft>) => void;
}

function Bar({ draft, set }: PartProps) {
  return (
    <>
      <Choice label="Shape of the bar" options={SHAPES} value={draft.shape} onChange={(shape) => set({ shape })} />
      <div className="bench-row">
        {draft.shape === 'round' ? (
          <Reading label="Diameter" unit="mm" of={draft} name="diameterMm" set={set} />
        ) : (
          <>
            <Reading label="Width" unit="mm" of={draft} name="widthMm" set={set} />
            <Reading label="Height, along the pull" unit="mm" of={draft} name="heightMm" set={set} />
          </>
        )}
        <Reading label="Span between the supports" unit="mm" of={draft} name="spanMm" set={set} />
        <Reading label="Lengths are read to ±" unit="mm" of={draft} name="lengthSdMm" set={set} />
        <Reading label="Sags are read to ±" unit="mm" of={draft} name="sagSdMm" set={set} />
      </div>
    </>
  );
}

function Hung({ draft, set }: PartProps) {
  const change = (at: number, to: Partial<BenchDraft['hung'][number]>) =>
    set({ hung: draft.hung.map((row, i) => (i === at ? { ...row, ...to } : row)) });
  return (
    <fieldset className="bench-hung">
      <legend>Weights and sags</legend>
      {draft.hung.map((row, i) => (
        <div key={i} className="bench-row">
          <Field
            label={`Weight ${i + 1}`}
            unit="g"
            inputMode="decimal"
            value={row.massG}
            onChange={(massG) => change(i, { massG })}
          />
          <Field
            label={`Sag ${i + 1}`}
            unit="mm"
            inputMode="decimal"
            value={row.sagMm}
            onChange={(sagMm) => change(i, { sagMm })}
          />
        </div>
      ))}
      <button
        type="button"
        className="button-small"
        onClick={() => set({ hung: [...draft.hung, { massG: '', sagMm: '' }] })}
      >
        One more weight
      </button>
    </fieldset>
  );
}

type TextKey = Exclude<keyof BenchDraft, 'shape' | 'hung'>;

interface ReadingProps {
  readonly label: string;
  readonly unit: string;
  readonly of: BenchDraft;
  readonly name: TextKey;
  readonly set: (change: Partial<BenchDraft>) => void;
}

function Reading({ label, unit, of, name, set }: ReadingProps) {
  return (
    <Field label={label} unit={unit} inputMode="decimal" value={of[name]} onChange={(text) => set({ [name]: text })} />
  );
}

function Found({ result }: ReturnType<typeof answerOf>) {
  if (!result) return null;
  const { youngMPa, strengthMPa, mostBorneMPa, cautions } = result;
  return (
    <section className="bench-found" aria-label="What the bar says" aria-live="polite">
      <p>
        Modulus <b>{threeFigures(youngMPa.value)} MPa</b> ± {threeFigures(youngMPa.sd)}
      </p>
      <p>
        {strengthMPa ? (
          <>
            Bending strength <b>{threeFigures(strengthMPa.value)} MPa</b> ± {threeFigures(strengthMPa.sd)}
          </>
        ) : (
          <>Strength not found; it bore {threeFigures(mostBorneMPa)} MPa.</>
        )}
      </p>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>
            <VerdictMark verdict="watch" />
            {caution}
          </li>
        ))}
      </ul>
    </section>
  );
}
