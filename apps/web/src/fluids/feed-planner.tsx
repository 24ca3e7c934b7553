/** Energy of a day, and grams of a feed whose own energy somebody read on its packet. */
import './fluids.css';
import { type CaseState, latestMass } from '@bonewright/casebook';
import { entry } from '@bonewright/evidence';
import { animalsOf, type EnergyGroup, energyEvidence, gramsOfFeed, neededKcalPerDay } from '@bonewright/ward';
import { EntryForm, type Faults, type FieldSpec, type Outcome, type Values } from '../form/entry-form.tsx';
import { readNumber } from '../form/read-number.ts';
import type { Append } from '../sync/new-event.ts';
import { published } from './published.ts';

interface PlannerProps {
  readonly state: CaseState;
  readonly append: Append;
}

type Key = 'group' | 'factor' | 'feed' | 'energy' | 'meals';
const GROUPS: readonly (readonly [EnergyGroup, string])[] = [
  ['mammal', 'mammal'],
  ['non-passerine', 'bird, no songbird'],
  ['passerine', 'songbird'],
];
const FACTORS = ['bird-active', 'elective-surgery', 'severe-trauma', 'sepsis', 'growth', 'starvation'] as const;
const MOST_MEALS = 48;

export function FeedPlanner({ state, append }: PlannerProps) {
  const mass = latestMass(state);
  const { feedPlan: planned } = state.chart;
  const isMammal = animalsOf(state.patient?.value.species ?? '') === 'mammals';
  return (
    <section aria-labelledby="energy-title">
      <h2 id="energy-title">Feed for a day</h2>
      {planned && (
        <p>{`Planned: ${planned.value.gramsPerDay.toFixed(0)} g of ${planned.value.feed} a day in ${planned.value.mealsPerDay} meals (${planned.by}).`}</p>
      )}
      {!mass ? (
        <p className="quiet">Not weighed: without a mass there is no plan of feed.</p>
      ) : (
        <EntryForm
          name="Feed for a day"
          draftKey={`feed-plan.${state.caseId}`}
          records="feed-planned"
          initial={{ group: isMammal ? 'mammal' : '', factor: '', feed: '', energy: '', meals: '' }}
          fields={(values) => fieldsOf(values, mass.massG)}
          word="Keep the plan"
          outcome={(values) => feedOutcome(values, mass.massG)}
          append={append}
        />
      )}
    </section>
  );
}

function fieldsOf(values: Values<Key>, massG: number): readonly FieldSpec<Key>[] {
  return [
    { kind: 'choice', key: 'group', label: 'Formula', options: GROUPS, isWide: true, help: formulaHelp(values) },
    {
      kind: 'number',
      key: 'factor',
      label: 'Times, as you choose it',
      unit: 'times',
      isWide: true,
      help: (
        <details>
          <summary>Published factors: for birds; none for mammals was found</summary>
          {FACTORS.map((name) => entry(`energy.factor.${name}`)).map((factor) => (
            <span key={factor.id} className="fluids-line">
              {`${factor.name}: ${published(factor)}`}
            </span>
          ))}
        </details>
      ),
    },
    { kind: 'text', key: 'feed', label: 'Which feed' },
    { kind: 'number', key: 'energy', label: 'Its energy, from the packet', unit: 'kcal/100 g', help: 'As it is fed.' },
    { kind: 'number', key: 'meals', label: 'Meals a day', unit: 'meals', help: <Result {...{ values, massG }} /> },
  ];
}

function formulaHelp({ group }: Values<Key>): string {
  const chosen = GROUPS.find(([name]) => name === group);
  if (!chosen) return 'Say which formula.';
  const { value, status, conflicts } = entry(energyEvidence(chosen[0]));
  return `${value} × kg to the power 0.75, kcal a day (${status === 'memory' ? 'from memory, not checked' : status}).${conflicts ? ` ${conflicts.why}.` : ''}`;
}

function Result({ values, massG }: { readonly values: Values<Key>; readonly massG: number }) {
  const plan = planOf(values, massG);
  if ('faults' in plan) return <>Grams stand here once the rest is filled in.</>;
  return (
    <output className="fluids-result">
      <b>{plan.gramsPerDay.toFixed(0)} g a day</b>
      <span>{`${(plan.gramsPerDay / plan.mealsPerDay).toFixed(1)} g a meal; ${plan.kcalPerDay.toFixed(0)} kcal a day`}</span>
    </output>
  );
}

interface Plan {
  readonly massG: number;
  readonly kcalPerDay: number;
  readonly kcalPer100G: number;
  readonly gramsPerDay: number;
  readonly mealsPerDay: number;
}

function planOf({ group, factor, energy, meals }: Values<Key>, massG: number): Plan | { readonly faults: Faults<Key> } {
  const formula = GROUPS.find(([name]) => name === group)?.[0];
  const [times, kcalPer100G, mealsPerDay] = [readNumber(factor), readNumber(energy), readNumber(meals)];
  if (!formula) return { faults: { group: 'Say which formula.' } };
  if (times === null || times <= 0) return { faults: { factor: 'Choose a factor; none is chosen for you.' } };
  if (kcalPer100G === null || kcalPer100G <= 0) return { faults: { energy: 'Read it on the packet.' } };
  if (mealsPerDay === null || mealsPerDay < 1 || mealsPerDay > MOST_MEALS || !Number.isInteger(mealsPerDay))
    return { faults: { meals: `A whole number, 1 to ${MOST_MEALS}.` } };
  const kcalPerDay = neededKcalPerDay(formula, massG, [times]);
  return { massG, kcalPerDay, kcalPer100G, gramsPerDay: gramsOfFeed(kcalPerDay, kcalPer100G), mealsPerDay };
}

function feedOutcome(values: Values<Key>, massG: number): Outcome<Key> {
  if (values.feed.trim() === '') return { faults: { feed: 'Say which feed.' } };
  const plan = planOf(values, massG);
  if ('faults' in plan) return plan;
  return { entries: [{ kind: 'feed-planned', payload: { ...plan, feed: values.feed.trim() } }] };
}
