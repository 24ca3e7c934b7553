/** The watch after waking: how long it has been, how long it still goes on, and whether the patient is warm. */
import { type CaseState, mayRecord } from '@bonewright/casebook';
import { entry, value } from '@bonewright/evidence';
import { coldBelow, minutesAt, trendPerHour } from '@bonewright/ward';
import { ChartDrawing } from '../chart/chart-drawing.tsx';
import { VerdictWord } from '../drawing/verdict-mark.tsx';
import type { Append } from '../sync/new-event.ts';
import { useRole } from '../sync/session.ts';
import { minutesSince, useNow } from '../theatre/use-now.ts';
import { moment } from '../words/time.ts';
import { wokeAt } from './woke.ts';

interface WatchProps {
  readonly state: CaseState;
  readonly append: Append;
}

const HOUR_MS = 3_600_000;

export function Watch({ state, append }: WatchProps) {
  const now = useNow();
  const role = useRole();
  const woke = wokeAt(state);
  const deaths = entry('watch.deaths-after');
  return (
    <section aria-labelledby="watch-title" className="watch">
      <h2 id="watch-title">Watch after waking</h2>
      {woke === null ? (
        <>
          <p>It is not marked as awake: the watch begins with “vaporiser off”, “tube out” or “righted itself”.</p>
          {mayRecord(role, 'chart-marked') && (
            <button
              type="button"
              className="button"
              onClick={() =>
                append([
                  {
                    kind: 'chart-marked',
                    payload: { at: new Date().toISOString(), mark: 'righted itself', words: '' },
                  },
                ])
              }
            >
              It righted itself now
            </button>
          )}
        </>
      ) : (
        <Running state={state} woke={woke} now={now} />
      )}
      <p className="caption">
        {`Of the ${deaths.appliesTo} that died around anaesthesia in one study, ${deaths.value} % died after it (${deaths.source.title}, ${deaths.source.year}). The ${value('watch.after-waking')} hours are from memory: the time in which that study counted.`}
      </p>
    </section>
  );
}

function Running({ state, woke, now }: { readonly state: CaseState; readonly woke: string; readonly now: number }) {
  const hours = value('watch.after-waking');
  const end = new Date(Date.parse(woke) + hours * HOUR_MS).toISOString();
  const minutes = minutesSince(woke, now);
  const readings = state.chart.readings.map((said) => said.value).filter(({ at }) => at >= woke && at <= end);
  const isOver = now >= Date.parse(end);
  return (
    <>
      <div className="watch-figures">
        <p>
          <span>since waking</span>
          {Math.floor(minutes / 60)} h {minutes % 60} min
        </p>
        <p>
          <span>{isOver ? 'the watch ended' : `watched for ${hours} h, until`}</span>
          {moment(end)}
        </p>
        <Warmth species={state.patient?.value.species ?? ''} readings={readings} />
      </div>
      {readings.length > 1 && (
        <ChartDrawing
          sitting={{ from: woke, to: isOver ? end : new Date(now).toISOString(), readings, ...NOTHING_ELSE }}
          species={state.patient?.value.species ?? ''}
          now={null}
        />
      )}
    </>
  );
}

const NOTHING_ELSE = { entries: [], bloodMl: 0, fluidMl: 0 };

interface WarmthProps {
  readonly species: string;
  readonly readings: readonly { readonly at: string; readonly temperatureC: number | null }[];
}

function Warmth({ species, readings }: WarmthProps) {
  const read = readings.flatMap(({ at, temperatureC }) =>
    temperatureC === null ? [] : [{ minutes: minutesAt(at), temperatureC }],
  );
  const last = read.at(-1);
  const limit = coldBelow(species);
  if (!last)
    return (
      <p>
        <span>temperature since waking</span>
        not read
      </p>
    );
  const trend = trendPerHour(read);
  const isCold = last.temperatureC < limit.belowC;
  return (
    <p>
      <span>temperature{trend === null ? '' : `, ${signed(trend)} °C an hour`}</span>
      {last.temperatureC.toFixed(1)} °C{' '}
      <VerdictWord verdict={isCold ? 'watch' : 'good'} word={isCold ? 'cold: warm it' : 'not cold'} />
      <span>
        {`cold below ${limit.belowC} °C: ${limit.entry.appliesTo}${limit.isWeak ? '; a weak figure' : ''}. Warm air first; a pad between animal and heat; it may cool again.`}
      </span>
    </p>
  );
}

const signed = (degrees: number): string => `${degrees < 0 ? '−' : '+'}${Math.abs(degrees).toFixed(1)}`;
