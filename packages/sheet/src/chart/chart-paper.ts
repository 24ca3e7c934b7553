/** The anaesthetic chart on paper: each anaesthetic drawn and in figures, then the checklists and what was left open. */
import { CHECKLISTS, type ChartSitting, chartSittings, latestMass } from '@bonewright/casebook';
import { entry } from '@bonewright/evidence';
import { InputError } from '@bonewright/fault';
import { bloodGroupOf, bloodLoss, bloodVolume, CHECK_ITEMS, CHECKLIST_SOURCE, LANES } from '@bonewright/ward';
import { type CoursePaper, type CoursePaperFacts, coursePaper } from '../course/course-frame.ts';
import { localMoment } from '../doses/dose-facts.ts';
import { drawLanes } from './draw-lanes.ts';

const CAUTION =
  'As read and written down by the people named in the record. Shaded: usual when awake, from the sources named; not what to aim at asleep.';

/** Makes the PDF. Throws InputError where nothing was charted. */
export async function chartPaper(facts: CoursePaperFacts): Promise<Uint8Array> {
  const sittings = chartSittings(facts.state);
  if (sittings.length === 0)
    throw new InputError('nothing was charted', 'chart', 'record a reading or an event in Theatre first');
  const on = coursePaper(facts, 'Anaesthetic chart', CAUTION);
  for (const sitting of sittings) oneSitting(on, facts, sitting);
  checks(on, facts);
  return on.paper.finish();
}

function oneSitting(on: CoursePaper, facts: CoursePaperFacts, sitting: ChartSitting): void {
  const { flow } = on;
  const hour = (iso: string) => localMoment(iso, facts.minutesEastOfUtc).slice(-5);
  flow.heading(`${localMoment(sitting.from, facts.minutesEastOfUtc)} to ${hour(sitting.to)}`);
  drawLanes(on, sitting, { species: facts.state.patient?.value.species ?? '', hour });
  if (sitting.entries.length > 0)
    flow.table(
      [
        { heading: '', share: 0.06 },
        { heading: 'At', share: 0.12 },
        { heading: 'What happened', share: 0.82 },
      ],
      sitting.entries.map(({ at, words }, i) => [`${i + 1}`, hour(at), words]),
    );
  flow.paragraph(lossWords(facts, sitting));
  if (sitting.readings.length === 0) return;
  flow.table(
    [
      { heading: 'At', share: 0.07 },
      ...LANES.map(({ word, unit }) => ({ heading: `${word} ${unit}`, share: 0.12, align: 'right' as const })),
      { heading: '', share: 0.09 },
    ],
    sitting.readings.map((reading) => [
      hour(reading.at),
      ...LANES.map(({ key, decimals }) => reading[key]?.toFixed(decimals) ?? 'not read'),
      reading.note,
    ]),
  );
}

function lossWords({ state }: CoursePaperFacts, { bloodMl, fluidMl }: ChartSitting): string {
  const fluid = `Fluid given: ${Number(fluidMl.toFixed(1))} ml.`;
  const lost = Number(bloodMl.toFixed(1));
  const mass = latestMass(state);
  if (!mass) return `${fluid} Blood lost: ${lost} ml; not weighed.`;
  const volume = bloodVolume(bloodGroupOf(state.patient?.value.species ?? ''), mass.massG);
  const { low, status } = entry(volume.evidence);
  const memory = status === 'memory' ? ', from memory' : '';
  return `${fluid} Blood lost: ${lost} ml, ${bloodLoss(bloodMl, volume).percent.toFixed(0)} % of about ${volume.lowMl.toFixed(0)} ml (${mass.massG} g at ${low} ml/kg${memory}).`;
}

function checks({ flow }: CoursePaper, { state, minutesEastOfUtc }: CoursePaperFacts): void {
  flow.heading('Checklists');
  flow.paragraph(CHECKLIST_SOURCE);
  for (const list of CHECKLISTS)
    flow.table(
      [
        { heading: list, share: 0.5 },
        { heading: '', share: 0.5 },
      ],
      CHECK_ITEMS[list].map(({ item, words }) => {
        const said = state.chart.checks.find(({ value }) => value.list === list && value.item === item);
        if (!said) return [words, 'left open'];
        const who = `${said.by}, ${localMoment(said.at, minutesEastOfUtc)}`;
        return [words, said.value.isDone ? `done: ${who}` : `not done, ${said.value.note}: ${who}`];
      }),
    );
}
