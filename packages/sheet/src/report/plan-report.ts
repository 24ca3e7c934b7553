/** The plan report: what went in, what came out, every check, what to measure again, and where the numbers come from. */
import {
  byWorry,
  type Case,
  type Check,
  LOAD_WORDS,
  type LoadName,
  loadsWorstFirst,
  type Plan,
} from '@bonewright/construct';
import { type Column, Flow } from '../paper/flow.ts';
import { Paper } from '../paper/paper.ts';
import type { TheatreSheetFacts } from '../theatre/facts.ts';
import { titleBlock } from '../theatre/foot.ts';
import { aim, figure, fromFractureMm, patientLine, wireWords } from '../theatre/words.ts';
import { entryFigure, entrySource, sourcesOf } from './sources.ts';

const CAUTION =
  'A decision aid for a licensed veterinary surgeon, who decides and answers for what is done; local law and codes of practice come first. A margin is how many times what is asked the weakest place bears; the figure given is the one that 95 of 100 trials keep above. Loads of small wild patients have hardly been measured: the spread of every margin contains that.';

/** Makes the PDF of the plan report. */
export async function planReport(facts: TheatreSheetFacts): Promise<Uint8Array> {
  const { patientCase, plan, title } = facts;
  const paper = new Paper({ title: `Plan report, ${title.patient}`, size: title.size ?? 'A4', made: title.made });
  const flow = new Flow(paper, {
    head: (page) => reportHead(page, facts),
    foot: (page, number) => {
      titleBlock(page, title, `page ${number}`);
      return page.bottom - 18;
    },
  });
  flow.paragraph(CAUTION);
  inputs(flow, patientCase);
  pins(flow, plan, patientCase);
  loads(flow, plan);
  checks(flow, plan.checks);
  sensitivity(flow, plan);
  sources(flow, plan);
  return paper.finish();
}

function reportHead(paper: Paper, { patientCase, plan, title }: TheatreSheetFacts): number {
  const y = paper.top;
  paper.part('H1', () => paper.text('Plan report', [paper.left, y - 2], { face: 'heading', size: 21 }));
  const who = `${title.patient}: ${patientLine(patientCase, title.weighed)}`;
  paper.part('P', () => paper.text(who, [paper.left, y + 8], { size: 10 }));
  const planned = [`plan “${plan.label}”, ${plan.verdict}`, title.planned].filter(Boolean).join(', ');
  paper.part('P', () => paper.text(planned, [paper.right, y + 1], { size: 9.5, align: 'right' }));
  paper.decoration(() => paper.line([paper.left, y + 14], [paper.right, y + 14], 0.5));
  return y + 15;
}

const TWO: Column[] = [
  { heading: 'what', share: 0.42 },
  { heading: 'as used', share: 0.58 },
];

function inputs(flow: Flow, { patient, bone, fracture, keepOut, samples, seed }: Case): void {
  const canals = bone.stations.flatMap((s) => s.canalMm ?? []);
  const narrowest = canals.length > 0 ? `${figure(Math.min(...canals), 2)} mm` : 'not measured';
  flow.heading('What went in');
  flow.table(TWO, [
    ['Patient', `${patient.species}${patient.ageClass ? `, ${patient.ageClass}` : ''}, ${figure(patient.massG, 0)} g`],
    ['Bone', `${[bone.side, bone.name].filter(Boolean).join(' ')}, ${figure(bone.lengthMm)} mm as reduced`],
    ['Stations measured, narrowest canal', `${bone.stations.length}, ${narrowest}`],
    ['Broken', `${figure(fracture.fromMm)} to ${figure(fracture.toMm)} mm, gap ${figure(fracture.gapMm)} mm`],
    [
      'Kind of fracture',
      `${fracture.comminuted ? 'comminuted, pieces carry nothing' : 'two pieces'}, ${figure(fracture.obliquityDeg, 0)}° oblique`,
    ],
    [
      'Kept out, proximal and distal',
      keepOut ? `${figure(keepOut.proximalMm)} and ${figure(keepOut.distalMm)} mm` : 'nothing said',
    ],
    ['Trials', `${samples}, seed ${seed}: the same input gives the same figures`],
  ]);
}

function pins(flow: Flow, plan: Plan, patientCase: Case): void {
  flow.heading('The construct');
  flow.table(
    [
      { heading: 'pin', share: 0.1 },
      { heading: 'wire, mm', share: 0.18 },
      { heading: 'at, mm', share: 0.12, align: 'right' },
      { heading: 'from fracture', share: 0.15, align: 'right' },
      { heading: '', share: 0.03 },
      { heading: 'aim', share: 0.24 },
      { heading: 'free, mm', share: 0.18, align: 'right' },
    ],
    plan.pins.map((pin, i) => [
      `P${i + 1}`,
      wireWords(pin, patientCase),
      figure(pin.sMm),
      figure(fromFractureMm(pin, patientCase)),
      '',
      aim(pin),
      figure(pin.freeLengthMm),
    ]),
  );
  const im = plan.im
    ? `IM pin ${figure(plan.im.diameterMm)} mm, ${plan.im.tiedIn ? 'tied into the column' : 'not tied in'}.`
    : 'No IM pin.';
  const columns = plan.column.map(
    (c) => `${figure(c.diameterMm)} mm from ${figure(c.fromMm, 0)} to ${figure(c.toMm, 0)} mm`,
  );
  const mass = `Frame ${figure(plan.massG)} g, ${figure(plan.massPercentBody)} % of body mass; ${plan.holes} holes.`;
  flow.paragraph(`${im} Column ${columns.join(' and ')}. ${mass}`);
}

function loads(flow: Flow, plan: Plan): void {
  flow.heading('The five loads, worst first');
  flow.table(
    [
      { heading: 'load', share: 0.25 },
      { heading: 'stiffness', share: 0.16 },
      { heading: 'gap moves', share: 0.14 },
      { heading: 'peak stress, MPa', share: 0.23 },
      { heading: 'margin 5, 50, 95', share: 0.22 },
    ],
    loadsWorstFirst(plan).map((load) => loadRow(plan, load)),
  );
}

function loadRow(plan: Plan, load: LoadName): string[] {
  const f = plan.loads[load];
  const strain = f.gapStrainPercent === null ? '' : `, ${figure(f.gapStrainPercent, 0)} %`;
  const im = f.peakImMPa === null ? '' : `, IM ${figure(f.peakImMPa, 0)}`;
  const { p05, p50, p95, weakest } = f.margin;
  return [
    `${LOAD_WORDS[load]} (${load})`,
    `${figure(f.stiffness)} ${f.unit}`,
    `${figure(f.gapMotionMm, 3)} mm${strain}`,
    `pins ${figure(f.peakPinMPa, 0)}${im}, column ${figure(f.peakColumnMPa)}, bone ${figure(f.peakBoneMPa, 0)}`,
    `${[p05, p50, p95].map((p) => figure(p, 2)).join(', ')}: ${weakest}`,
  ];
}

function checks(flow: Flow, all: readonly Check[]): void {
  flow.heading('Every check');
  flow.table(
    [
      { heading: 'verdict', share: 0.1 },
      { heading: 'what', share: 0.62 },
      { heading: 'watch', share: 0.14, align: 'right' },
      { heading: 'stop', share: 0.14, align: 'right' },
    ],
    all.toSorted(byWorry).map((c) => [c.verdict, c.because, limit(c.watch, c.unit), limit(c.stop, c.unit)]),
  );
}

const limit = (value: number | null, unit: string): string =>
  value === null ? '' : `${Number(value.toPrecision(3))} ${unit}`;

/** Less is not worth a line of paper. */
const FELT_PERCENT = 0.1;

function sensitivity(flow: Flow, plan: Plan): void {
  const felt = plan.sensitivity.filter(({ effectOnMarginPercent }) => Math.abs(effectOnMarginPercent) >= FELT_PERCENT);
  if (felt.length === 0) return;
  flow.heading('What the worst margin hangs on');
  flow.table(
    [
      { heading: 'input, moved by its own standard deviation', share: 0.7 },
      { heading: 'worst margin moves, %', share: 0.3, align: 'right' },
    ],
    felt.map(({ input, effectOnMarginPercent }) => [input, figure(effectOnMarginPercent)]),
  );
}

function sources(flow: Flow, plan: Plan): void {
  flow.heading('Where the limits come from');
  flow.table(
    [
      { heading: 'entry', share: 0.34 },
      { heading: 'value', share: 0.2 },
      { heading: 'source', share: 0.46 },
    ],
    sourcesOf(plan).map((e) => [e.name, entryFigure(e), entrySource(e)]),
  );
}
