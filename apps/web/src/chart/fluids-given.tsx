/** Fluid that went in: how much, of what, which way. */
import type { CaseState, ChartSitting } from '@bonewright/casebook';
import { EntryForm, type FieldSpec, type Outcome, type Values } from '../form/entry-form.tsx';
import { numberFault, readNumber } from '../form/read-number.ts';
import type { Append } from '../sync/new-event.ts';

interface FluidsGivenProps {
  readonly state: CaseState;
  readonly sitting: ChartSitting | null;
  readonly append: Append;
}

type Key = 'ml' | 'what' | 'route';
export const ROUTES = ['SC', 'IV', 'IO', 'IP', 'PO'] as const;

const FIELDS: readonly FieldSpec<Key>[] = [
  { kind: 'number', key: 'ml', label: 'Fluid', unit: 'ml' },
  { kind: 'text', key: 'what', label: 'Which fluid' },
  { kind: 'choice', key: 'route', label: 'Which way', options: ROUTES.map((route) => [route, route]), isWide: true },
];

export function FluidsGiven({ state, sitting, append }: FluidsGivenProps) {
  const { fluids, fluidPlan } = state.chart;
  const before = fluids.at(-1)?.value ?? fluidPlan?.value ?? null;
  return (
    <section aria-labelledby="fluid-title">
      <h3 id="fluid-title" className="chart-heading">
        Fluid given
      </h3>
      <p className="chart-figure">{Number((sitting?.fluidMl ?? 0).toFixed(1))} ml in this anaesthetic</p>
      {fluidPlan && (
        <p className="caption">{`Planned: ${fluidPlan.value.what} ${fluidPlan.value.route}, ${fluidPlan.value.mlPerHour.toFixed(1)} ml/h (${fluidPlan.by}).`}</p>
      )}
      <EntryForm
        name="Fluid given"
        draftKey={`fluid-given.${state.caseId}`}
        records="fluid-given"
        initial={{ ml: '', what: before?.what ?? '', route: before?.route ?? '' }}
        fields={() => FIELDS}
        word="Add the fluid"
        outcome={givenOutcome}
        append={append}
      />
    </section>
  );
}

function givenOutcome({ ml, what, route }: Values<Key>): Outcome<Key> {
  const amount = readNumber(ml);
  const way = ROUTES.find((one) => one === route);
  if (amount === null || amount <= 0) return { faults: { ml: numberFault(ml) ?? 'Write ml in digits.' } };
  if (what.trim() === '') return { faults: { what: 'Say which fluid.' } };
  if (!way) return { faults: { route: 'Say which way it went in.' } };
  const payload = { at: new Date().toISOString(), ml: amount, what: what.trim(), route: way };
  return { entries: [{ kind: 'fluid-given', payload }] };
}
