/** Fluids planned: dryness judged, maintenance chosen by a person from published ranges, pace with its conflict. */
import './fluids.css';
import { type CaseState, latestMass } from '@bonewright/casebook';
import { type Entry, entry } from '@bonewright/evidence';
import { animalsOf, dropsPerMinute, type FluidRequest, fluidPlan, secondsPerDrop } from '@bonewright/ward';
import { ROUTES } from '../chart/fluids-given.tsx';
import { EntryForm, type Faults, type FieldSpec, type Outcome, type Values } from '../form/entry-form.tsx';
import { readNumber } from '../form/read-number.ts';
import type { Append } from '../sync/new-event.ts';
import { published } from './published.ts';

interface PlannerProps {
  readonly state: CaseState;
  readonly append: Append;
}

type Key = 'dry' | 'maintenance' | 'other' | 'over' | 'drops' | 'what' | 'route';
const DRIEST_PERCENT = 30;
const MOST_ML_PER_KG = 500;
const LONGEST_H = 96;

const RANGES = {
  birds: ['fluids.maintenance.bird', 'fluids.maintenance.small-passerine'],
  mammals: ['fluids.maintenance.small-mammal', 'fluids.maintenance.rabbit'],
} as const;

export function FluidPlanner({ state, append }: PlannerProps) {
  const mass = latestMass(state);
  const { fluidPlan: planned } = state.chart;
  const animals = animalsOf(state.patient?.value.species ?? '');
  const ranges = RANGES[animals].map((id) => entry(id));
  return (
    <section aria-labelledby="fluids-title">
      <h2 id="fluids-title">Fluids</h2>
      {planned && (
        <p>{`Planned: ${planned.value.what} ${planned.value.route}, ${planned.value.mlPerHour.toFixed(1)} ml/h over ${planned.value.overHours} h (${planned.by}).`}</p>
      )}
      {!mass ? (
        <p className="quiet">Not weighed: without a mass there is no plan of fluids.</p>
      ) : (
        <EntryForm<Key>
          name="Fluids"
          draftKey={`fluid-plan.${state.caseId}`}
          records="fluids-planned"
          initial={{ dry: '', maintenance: '', other: '0', over: '', drops: '', what: '', route: '' }}
          fields={(values) => fieldsOf(values, mass.massG, animals, ranges)}
          word="Keep the plan"
          outcome={(values) => planOutcome(values, mass.massG)}
          append={append}
          below={{
            key: 'maintenance',
            node: (change) => (
              <p className="fluids-take">
                {ranges.flatMap(({ id, low, high }) =>
                  [...new Set([low, high])].map((figure) => (
                    <button
                      key={`${id}-${figure}`}
                      type="button"
                      className="button-small"
                      onClick={() => change({ maintenance: `${figure}` })}
                    >
                      Take {figure}
                    </button>
                  )),
                )}
              </p>
            ),
          }}
        />
      )}
    </section>
  );
}

function fieldsOf(
  values: Values<Key>,
  massG: number,
  animals: 'birds' | 'mammals',
  ranges: readonly Entry[],
): readonly FieldSpec<Key>[] {
  const lowest = Math.min(...ranges.map(({ low }) => low));
  const chosen = readNumber(values.maintenance);
  return [
    { kind: 'number', key: 'dry', label: 'Dryness, as judged', unit: '%', help: drynessHelp() },
    { kind: 'number', key: 'other', label: 'Lost besides', unit: 'ml', help: 'Blood, drainage, diarrhoea.' },
    {
      kind: 'number',
      key: 'maintenance',
      label: 'Maintenance, as you choose it',
      unit: 'ml/kg/day',
      isWide: true,
      help: (
        <>
          {ranges.map((range) => (
            <span key={range.id} className="fluids-line">
              {published(range)}
            </span>
          ))}
          {chosen !== null && chosen < lowest / 2 && (
            <strong className="fluids-line">
              Less than half of any figure above. A formula for dogs is printed on one page with its bracket around mass
              and factor together, and then gives a third of what it should.
            </strong>
          )}
        </>
      ),
    },
    { kind: 'number', key: 'over', label: 'Made good over', unit: 'h', help: paceHelp(animals) },
    { kind: 'number', key: 'drops', label: 'Giving set', unit: 'drops/ml', help: 'Read it on the set.' },
    { kind: 'text', key: 'what', label: 'Which fluid', help: warmHelp(animals) },
    {
      kind: 'choice',
      key: 'route',
      label: 'Which way',
      options: ROUTES.map((route) => [route, route]),
      isWide: true,
      help: <Result values={values} massG={massG} />,
    },
  ];
}

const drynessHelp = (): string =>
  `Under ${entry('fluids.dry.treat-before-surgery').value} % cannot be felt; from there on treat it before surgery; ${entry('fluids.dry.critical').value} % is critical (leaflet, rabbits and rodents).`;

function paceHelp(animals: 'birds' | 'mammals'): string {
  const [mammal, bird] = [entry('fluids.replacement.mammal-first-half'), entry('fluids.replacement.bird-first-half')];
  const own = `Mammals: half now, half after ${mammal.low} to ${mammal.high} h (leaflet). Birds: half in ${bird.low} to ${bird.high} h, the rest over 24 to 48 h, or 20 to 25 % in 4 to 6 h (formulary, one table).`;
  return `${own} They disagree; this is one of the ${animals}.`;
}

function warmHelp(animals: 'birds' | 'mammals'): string {
  const { low, high } = entry('fluids.warmth.bird');
  return `Warm it: ${low} to ${high} °C for birds${animals === 'birds' ? '' : '; no figure for mammals was found'}.`;
}

function Result({ values, massG }: { readonly values: Values<Key>; readonly massG: number }) {
  const request = requestOf(values, massG);
  if ('faults' in request) return <>ml an hour stand here once dryness, maintenance and hours are filled in.</>;
  const plan = fluidPlan(request);
  const drops = readNumber(values.drops);
  const seconds = drops !== null && drops > 0 ? secondsPerDrop(plan.mlPerHour, drops) : null;
  return (
    <output className="fluids-result">
      <b>{plan.mlPerHour.toFixed(1)} ml/h</b>
      {drops !== null && drops > 0 && (
        <b>
          {dropsPerMinute(plan.mlPerHour, drops).toFixed(1)} drops/min
          {seconds === null ? '' : `, one in ${seconds.toFixed(1)} s`}
        </b>
      )}
      <span>
        {`${plan.deficitMl.toFixed(1)} ml dryness (${massG} g × ${request.dehydrationPercent} %) + ${plan.maintenanceMl.toFixed(1)} ml maintenance + ${request.otherLossesMl.toFixed(1)} ml lost = ${plan.totalMl.toFixed(1)} ml over ${request.overHours} h`}
      </span>
    </output>
  );
}

function requestOf(
  { dry, maintenance, other, over }: Values<Key>,
  massG: number,
): FluidRequest | { readonly faults: Faults<Key> } {
  const within = (text: string, most: number): number | null => {
    const figure = readNumber(text);
    return figure !== null && figure >= 0 && figure <= most ? figure : null;
  };
  const dehydrationPercent = within(dry, DRIEST_PERCENT);
  const maintenanceMlPerKgDay = within(maintenance, MOST_ML_PER_KG);
  const otherLossesMl = within(other || '0', Number.MAX_VALUE);
  const overHours = within(over, LONGEST_H);
  if (dehydrationPercent === null) return { faults: { dry: `Judge it: 0 to ${DRIEST_PERCENT} %.` } };
  if (otherLossesMl === null) return { faults: { other: 'Write ml in digits, 0 for none.' } };
  if (maintenanceMlPerKgDay === null) return { faults: { maintenance: 'Choose a figure; none is chosen for you.' } };
  if (overHours === null || overHours === 0)
    return { faults: { over: `Say over how many hours, up to ${LONGEST_H}.` } };
  return { massG, dehydrationPercent, maintenanceMlPerKgDay, otherLossesMl, overHours };
}

function planOutcome(values: Values<Key>, massG: number): Outcome<Key> {
  const request = requestOf(values, massG);
  if ('faults' in request) return request;
  const route = ROUTES.find((one) => one === values.route);
  if (values.what.trim() === '') return { faults: { what: 'Say which fluid.' } };
  if (!route) return { faults: { route: 'Say which way it goes in.' } };
  const { mlPerHour } = fluidPlan(request);
  return { entries: [{ kind: 'fluids-planned', payload: { ...request, mlPerHour, what: values.what.trim(), route } }] };
}
