/** The skin round each pin, by the scale that a vet chose for this patient, or in plain words. */
import { type CaseState, chosenLimit, mayRecord } from '@bonewright/casebook';
import { PIN_SITE_SCALES, type PinSiteScale, pinSiteScale, tellsVet } from '@bonewright/ward';
import { VerdictMark } from '../drawing/verdict-mark.tsx';
import { EntryForm, type FieldSpec, type Outcome, type Values } from '../form/entry-form.tsx';
import type { Append, NewEvent } from '../sync/new-event.ts';
import { useRole } from '../sync/session.ts';
import { moment } from '../words/time.ts';

interface PinSitesProps {
  readonly state: CaseState;
  readonly append: Append;
}

const SUBJECT = 'pin-site-scale';

export function PinSites({ state, append }: PinSitesProps) {
  const scale = pinSiteScale(chosenLimit(state, SUBJECT));
  const pins = pinNumbers(state);
  return (
    <section aria-labelledby="pin-sites-title">
      <h2 id="pin-sites-title">Pin sites</h2>
      <ScaleChoice scale={scale} state={state} append={append} />
      <LastSeen state={state} />
      <EntryForm
        name="Pin sites"
        draftKey={`pin-sites.${state.caseId}`}
        records="pin-site-seen"
        initial={{}}
        fields={() => fieldsOf(scale, pins)}
        word="Record the pin sites"
        outcome={(values) => pinSitesOutcome(scale, pins, values)}
        append={append}
      />
    </section>
  );
}

function ScaleChoice({ scale, state, append }: PinSitesProps & { readonly scale: PinSiteScale }) {
  const isOwnToChoose = mayRecord(useRole(), 'limit-chosen');
  const chosen = state.course.limits.find(({ value }) => value.subject === SUBJECT);
  return (
    <details className="scale-choice">
      <summary>{`Scale: ${scale.name}${chosen ? `, chosen by ${chosen.by}` : ''}`}</summary>
      <p>{scale.says}</p>
      <dl>
        {scale.grades.map(({ grade, means, tellsVet: isTold }) => (
          <div key={grade}>
            <dt>{grade}</dt>
            <dd>{[means, isTold && 'a vet is told the same day'].filter(Boolean).join('; ') || 'nothing more'}</dd>
          </div>
        ))}
      </dl>
      <p className="caption">Source: {scale.source}.</p>
      {isOwnToChoose && (
        <p className="scale-others">
          {PIN_SITE_SCALES.filter((other) => other !== scale).map(({ id, name }) => (
            <button
              key={id}
              type="button"
              className="button-small"
              onClick={() => append([{ kind: 'limit-chosen', payload: { subject: SUBJECT, evidenceId: id } }])}
            >
              Go by {name}
            </button>
          ))}
        </p>
      )}
      <p className="caption">
        Twelve systems are in use, with no agreed definition (Iliadis et al. 2022). Others exist whose grades were not
        read; they are not offered.
      </p>
    </details>
  );
}

/** The last word on each pin. */
function LastSeen({ state }: { readonly state: CaseState }) {
  const seen = state.care.pinSites;
  const last = [...new Map(seen.map((one) => [one.value.pin, one])).values()];
  if (last.length === 0) return <p className="quiet">Nobody has looked yet, as far as the record knows.</p>;
  return (
    <ul className="seen-list">
      {last.map(({ value, by, seq }) => (
        <li key={seq}>
          {tellsVet(value.scale, value.grade) && <VerdictMark verdict="watch" />}
          <span>
            <strong>{`${value.pin === null ? 'All pins' : `P${value.pin}`}: ${value.grade}`}</strong>
            {value.words && `, ${value.words}`}
            <span className="caption">{` ${moment(value.at)}, ${by}${value.isSeenInPerson ? '' : ', from a photograph'}`}</span>
          </span>
        </li>
      ))}
    </ul>
  );
}

function pinNumbers(state: CaseState): number[] {
  const placed = state.theatre.pins.filter(({ placed }) => placed !== null).map(({ pin }) => pin);
  const planned = state.construct?.value.construct.pins.map((_, i) => i + 1) ?? [];
  return (placed.length > 0 ? placed : planned).toSorted((a, b) => a - b);
}

const keyOf = (pin: number | null): string => `pin-${pin ?? 'all'}`;

function fieldsOf({ grades }: PinSiteScale, pins: readonly number[]): FieldSpec<string>[] {
  const options = grades.map(({ grade }) => [grade, grade] as const);
  const sites = pins.length > 0 ? pins : [null];
  return [
    ...sites.map(
      (pin): FieldSpec<string> => ({
        kind: 'choice',
        key: keyOf(pin),
        label: pin === null ? 'All pins' : `P${pin}`,
        isWide: true,
        options,
      }),
    ),
    { kind: 'text', key: 'words', label: 'In words', isWide: true },
    {
      kind: 'choice',
      key: 'person',
      label: 'How it was looked at',
      isWide: true,
      options: [
        ['yes', 'at the animal'],
        ['no', 'from a photograph only'],
      ],
      help: 'A photograph is only moderately reliable: somebody confirms it at the animal.',
    },
  ];
}

function pinSitesOutcome(scale: PinSiteScale, pins: readonly number[], values: Values<string>): Outcome<string> {
  const at = new Date().toISOString();
  const sites = pins.length > 0 ? pins : [null];
  const entries = sites.flatMap((pin): NewEvent[] => {
    const grade = values[keyOf(pin)] ?? '';
    if (!scale.grades.some((one) => one.grade === grade)) return [];
    const words = (values.words ?? '').trim();
    const isSeenInPerson = values.person === 'yes';
    return [
      { kind: 'pin-site-seen', payload: { at, pin, scale: scale.id, grade, words, photo: null, isSeenInPerson } },
    ];
  });
  if (entries.length === 0) return { faults: { [keyOf(sites[0] ?? null)]: 'Say it of one pin at least.' } };
  if (!values.person) return { faults: { person: 'Say how it was looked at.' } };
  return { entries };
}
