/** Blood lost, in ml or in swabs, against what the patient is thought to have. */
import { type CaseState, type ChartSitting, latestMass } from '@bonewright/casebook';
import { entry } from '@bonewright/evidence';
import { type BloodBand, bloodGroupOf, bloodLoss, bloodVolume, swabsMl } from '@bonewright/ward';
import { VerdictWord } from '../drawing/verdict-mark.tsx';
import { EntryForm, type FieldSpec, type Outcome, type Values } from '../form/entry-form.tsx';
import { numberFault, readNumber } from '../form/read-number.ts';
import type { Append } from '../sync/new-event.ts';

interface BloodLostProps {
  readonly state: CaseState;
  readonly sitting: ChartSitting | null;
  readonly append: Append;
}

type Key = 'ml' | 'wet' | 'dry';

const FIELDS: readonly FieldSpec<Key>[] = [
  { kind: 'number', key: 'ml', label: 'Blood, measured or judged', unit: 'ml' },
  { kind: 'number', key: 'wet', label: 'or swabs, wet', unit: 'g' },
  { kind: 'number', key: 'dry', label: 'as many swabs, dry', unit: 'g' },
];

export function BloodLost({ state, sitting, append }: BloodLostProps) {
  return (
    <section aria-labelledby="blood-title">
      <h3 id="blood-title" className="chart-heading">
        Blood lost
      </h3>
      <SoFar state={state} lostMl={sitting?.bloodMl ?? 0} />
      <EntryForm
        name="Blood lost"
        draftKey={`blood.${state.caseId}`}
        records="blood-lost"
        initial={{ ml: '', wet: '', dry: '' }}
        fields={() => FIELDS}
        word="Add the loss"
        outcome={lossOutcome}
        append={append}
      />
    </section>
  );
}

const BANDS: Readonly<Record<BloodBand, readonly ['good' | 'watch' | 'stop', string]>> = {
  within: ['good', 'small so far'],
  alert: ['watch', 'look again'],
  'stop-and-think': ['watch', 'stop and think'],
  critical: ['stop', 'needs fluid in its place'],
  shock: ['stop', 'shock is likely'],
};

function SoFar({ state, lostMl }: { readonly state: CaseState; readonly lostMl: number }) {
  const mass = latestMass(state);
  const species = state.patient?.value.species ?? '';
  if (!mass) return <p className="theatre-note">{lostMl} ml so far. Not weighed, so nothing to hold it against.</p>;
  const volume = bloodVolume(bloodGroupOf(species), mass.massG);
  const { percent, band } = bloodLoss(lostMl, volume);
  const [verdict, word] = BANDS[band];
  const from = entry(volume.evidence);
  return (
    <>
      <p className="chart-figure">
        {Number(lostMl.toFixed(1))} ml, {percent.toFixed(0)} % <VerdictWord verdict={verdict} word={word} />
      </p>
      <p className="caption">
        {`of about ${volume.lowMl.toFixed(0)} ml (${mass.massG} g at ${from.low} ml/kg, ${from.appliesTo}${from.status === 'memory' ? '; from memory' : ''}). Bands at ${limit('alert')}, ${limit('stop-and-think')}, ${limit('critical')} and ${limit('shock')} %: borrowed from guides on sampling healthy laboratory animals.`}
      </p>
    </>
  );
}

const limit = (band: Exclude<BloodBand, 'within'>): number => entry(`blood.loss.${band}`).value;

function lossOutcome({ ml, wet, dry }: Values<Key>): Outcome<Key> {
  const at = new Date().toISOString();
  const direct = readNumber(ml);
  if (direct !== null && direct >= 0)
    return { entries: [{ kind: 'blood-lost', payload: { at, ml: direct, swabs: null } }] };
  const [wetG, dryG] = [readNumber(wet), readNumber(dry)];
  if (wetG === null && dryG === null) return { faults: { ml: numberFault(ml) ?? 'Write ml, or weigh the swabs.' } };
  if (wetG === null || dryG === null || dryG < 0) return { faults: { wet: 'Weigh them wet, and as many dry.' } };
  if (wetG < dryG) return { faults: { wet: 'Wet they weigh more than dry. Weigh as many dry ones.' } };
  return { entries: [{ kind: 'blood-lost', payload: { at, ml: swabsMl(wetG, dryG), swabs: { wetG, dryG } } }] };
}
