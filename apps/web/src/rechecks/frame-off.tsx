/** The frame comes off on two signed facts, by hand and by film, and a vet's decision. What is missing needs a reason. */
import { type CaseState, isFrameOn, laterFilmSets } from '@bonewright/casebook';
import { AFTER_FRAME } from '@bonewright/ward';
import { EntryForm, type FieldSpec, type Outcome, type Values } from '../form/entry-form.tsx';
import { ReadinessList } from '../release/readiness-list.tsx';
import type { Append } from '../sync/new-event.ts';
import { fromField, moment, toField } from '../words/time.ts';

interface FrameOffProps {
  readonly state: CaseState;
  readonly append: Append;
}

export function FrameOff({ state, append }: FrameOffProps) {
  const { union, frameOff, frameTaken } = state.course;
  return (
    <section aria-labelledby="frame-off-title" className="frame-off">
      <h2 id="frame-off-title">Frame off</h2>
      <p className="quiet">
        On union by hand and by film, both. Weeks are not promised: raptors’ tibiotarsi took 15 to 70 days (Bueno et al.
        2015), rabbits’ feet 20 to 45 (Sasai et al. 2018).
      </p>
      <div className="two-facts">
        <Fact by="hand" title="By hand" asks="Firm under the hand, no pain" said={union.hand} {...{ state, append }} />
        <Fact by="film" title="By film" asks="Bone across on the film" said={union.film} {...{ state, append }} />
      </div>
      <h3>The decision</h3>
      {frameOff && (
        <p className="decision-stands">
          {`${frameOff.value.isToComeOff ? 'The frame is to come off' : 'The frame stays on'}${frameOff.value.words ? `, ${frameOff.value.words}` : ''}. Signed ${frameOff.by}, ${moment(frameOff.at)}.${frameOff.why ? ` What was missing: ${frameOff.why}` : ''}`}
        </p>
      )}
      <EntryForm
        name="Decision on the frame"
        draftKey={`frame-off.${state.caseId}`}
        records="frame-off-decided"
        initial={{ off: '', words: '' }}
        fields={() => DECISION}
        word="Sign the decision"
        outcome={(values) => decisionOutcome(state, values)}
        append={append}
      />
      {(isFrameOn(state) || frameTaken) && <TakenOff {...{ state, append }} />}
      {frameTaken && (
        <ReadinessList title="After the frame came off" items={AFTER_FRAME} state={state} append={append} />
      )}
    </section>
  );
}

type FactKey = 'united' | 'words';

interface FactProps extends FrameOffProps {
  readonly by: 'hand' | 'film';
  readonly title: string;
  readonly asks: string;
  readonly said: CaseState['course']['union']['hand'];
}

function Fact({ by, title, asks, said, state, append }: FactProps) {
  const fields: readonly FieldSpec<FactKey>[] = [
    {
      kind: 'choice',
      key: 'united',
      label: asks,
      isWide: true,
      options: [
        ['yes', 'yes'],
        ['no', 'not yet'],
      ],
    },
    { kind: 'text', key: 'words', label: 'What was found', isWide: true },
  ];
  return (
    <div>
      <h3>{title}</h3>
      <p>
        {said
          ? `${said.value.isUnited ? 'United' : 'Not united'}${said.value.words ? `, ${said.value.words}` : ''}. Signed ${said.by}, ${moment(said.at)}.`
          : 'Not signed.'}
      </p>
      <EntryForm
        name={`Union by ${by}`}
        draftKey={`union-${by}.${state.caseId}`}
        records="union-judged"
        initial={{ united: '', words: '' }}
        fields={() => fields}
        word={`Sign it by ${by}`}
        outcome={({ united, words }): Outcome<FactKey> => {
          if (united === '') return { faults: { united: 'Say yes or not yet.' } };
          const filmIds = by === 'film' ? lastFilms(state) : [];
          const payload = { by, isUnited: united === 'yes', words: words.trim(), filmIds };
          return { entries: [{ kind: 'union-judged', payload }] };
        }}
        append={append}
      />
    </div>
  );
}

function lastFilms(state: CaseState): string[] {
  const last = laterFilmSets(state).at(-1);
  return [last?.craniocaudal, last?.mediolateral].flatMap((film) => (film ? [film.filmId] : []));
}

type DecisionKey = 'off' | 'words';

const DECISION: readonly FieldSpec<DecisionKey>[] = [
  {
    kind: 'choice',
    key: 'off',
    label: 'The frame',
    options: [
      ['yes', 'comes off'],
      ['no', 'stays on'],
    ],
  },
  { kind: 'text', key: 'words', label: 'In words' },
];

function decisionOutcome({ course: { union } }: CaseState, { off, words }: Values<DecisionKey>): Outcome<DecisionKey> {
  if (off === '') return { faults: { off: 'Say whether it comes off.' } };
  const payload = { isToComeOff: off === 'yes', words: words.trim() };
  const entries = [{ kind: 'frame-off-decided' as const, payload }];
  const missing = [
    !union.hand?.value.isUnited && 'Nobody signed that it is united by hand.',
    !union.film?.value.isUnited && 'Nobody signed that it is united by film.',
  ].filter((line) => line !== false);
  if (off === 'no' || missing.length === 0) return { entries };
  return { ask: 'The frame off without both facts', missing, common: COMMON, entries };
}

const COMMON = ['pins are loose', 'pin tracts infected', 'no film can be taken here'];

type TakenKey = 'at' | 'allOut' | 'words';

const TAKEN: readonly FieldSpec<TakenKey>[] = [
  { kind: 'time', key: 'at', label: 'Taken off at' },
  {
    kind: 'choice',
    key: 'allOut',
    label: 'All that went in is out',
    options: [
      ['yes', 'yes, counted'],
      ['no', 'no'],
    ],
  },
  { kind: 'text', key: 'words', label: 'In words', isWide: true, help: 'What stayed in, where, and why.' },
];

function TakenOff({ state, append }: FrameOffProps) {
  const { frameTaken } = state.course;
  return (
    <>
      <h3>Taken off</h3>
      {frameTaken && (
        <p className="decision-stands">
          {`Taken off ${moment(frameTaken.value.at)}, ${frameTaken.value.isAllOut ? 'all out' : 'not all out'}${frameTaken.value.words ? `, ${frameTaken.value.words}` : ''} (${frameTaken.by}).`}
        </p>
      )}
      <EntryForm
        name="Frame taken off"
        draftKey={`frame-taken.${state.caseId}`}
        records="frame-taken-off"
        initial={{ at: toField(new Date()), allOut: '', words: '' }}
        fields={() => TAKEN}
        word="Record that it is off"
        outcome={(values) => takenOutcome(state, values)}
        append={append}
      />
    </>
  );
}

function takenOutcome(state: CaseState, values: Values<TakenKey>): Outcome<TakenKey> {
  const at = fromField(values.at);
  if (at === null) return { faults: { at: 'Say when.' } };
  if (values.allOut === '') return { faults: { allOut: 'Count it first.' } };
  const words = values.words.trim();
  if (values.allOut === 'no' && words === '') return { faults: { words: 'Say what stayed in.' } };
  const entries = [{ kind: 'frame-taken-off' as const, payload: { at, isAllOut: values.allOut === 'yes', words } }];
  if (state.course.frameOff?.value.isToComeOff) return { entries };
  return {
    ask: 'No vet signed that it is to come off',
    missing: ['The decision is not in the record.'],
    common: ['it came off by itself', 'decided by telephone'],
    entries,
  };
}
