/** Each pin's skin in a plain word, one press each; what a vet should hear of says so at once. */
import type { CaseState } from '@bonewright/casebook';
import { PIN_SITE_SCALES } from '@bonewright/ward';
import { VerdictMark } from '../drawing/verdict-mark.tsx';
import { Choice } from '../form/choice.tsx';
import type { Append } from '../sync/new-event.ts';
import { dayOf } from '../words/time.ts';

interface PinWordsProps {
  readonly state: CaseState;
  readonly append: Append;
}

const [PLAIN] = PIN_SITE_SCALES;

export function PinWords({ state, append }: PinWordsProps) {
  const pins = state.theatre.pins.filter(({ placed }) => placed !== null).map(({ pin }) => pin);
  const rows: readonly (number | null)[] = pins.length > 0 ? pins : [null];
  const seen = (pin: number | null) =>
    state.care.pinSites.findLast(({ value }) => value.pin === pin && dayOf(value.at) === 1)?.value ?? null;
  const tells = rows.some((pin) => PLAIN.grades.find(({ grade }) => grade === seen(pin)?.grade)?.tellsVet);
  return (
    <section aria-labelledby="pins-title" className="carer-pins">
      <h2 id="pins-title">Look at each pin at the skin</h2>
      <p>Touch nothing.</p>
      {rows.map((pin) => (
        <Choice
          key={pin ?? 'all'}
          label={pin === null ? 'All pins' : `P${pin}`}
          options={PLAIN.grades.map(({ grade }) => [grade, grade])}
          value={seen(pin)?.grade ?? null}
          onChange={(grade) =>
            append([
              {
                kind: 'pin-site-seen',
                payload: {
                  ...{ at: new Date().toISOString(), pin, scale: PLAIN.id, grade },
                  ...{ words: '', photo: null, isSeenInPerson: true },
                },
              },
            ])
          }
        />
      ))}
      {tells && (
        <div className="callout callout-stop" role="status">
          <strong>
            <VerdictMark verdict="stop" />
            Tell us today: ring, or ask below with a photograph.
          </strong>
        </div>
      )}
    </section>
  );
}
