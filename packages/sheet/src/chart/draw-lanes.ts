/** The lines of one anaesthetic, strip by strip on one time axis, as on the screen. */
import type { ChartSitting } from '@bonewright/casebook';
import { LANES, type Lane, laneSpan, minutesAt, timeAxis, usualOf, usualWords } from '@bonewright/ward';
import type { CoursePaper } from '../course/course-frame.ts';
import type { Paper } from '../paper/paper.ts';

const HEAD_MM = 6;
const STRIP_MM = 17;
const FOOT_MM = 7;
const WORDS_MM = 30;
const PAD_MM = 1.8;
const DOT_MM = 0.7;
const MS_PER_MINUTE = 60_000;

interface Look {
  readonly species: string;
  readonly hour: (iso: string) => string;
}

interface Plot {
  readonly paper: Paper;
  readonly top: number;
  readonly left: number;
  readonly right: number;
  /** From minutes since 1970, mm. */
  readonly x: (minutes: number) => number;
}

/** Draws nothing where nothing was read. */
export function drawLanes({ paper, flow }: CoursePaper, sitting: ChartSitting, look: Look): void {
  const lanes = LANES.filter(({ key }) => sitting.readings.some((reading) => reading[key] !== null));
  if (lanes.length === 0) return;
  const top = flow.room(HEAD_MM + lanes.length * STRIP_MM + FOOT_MM);
  const foot = top + HEAD_MM + lanes.length * STRIP_MM;
  const [left, right] = [paper.left + WORDS_MM, paper.right - 14];
  const axis = timeAxis(sitting.from, sitting.to);
  const x = (minutes: number) => left + ((minutes - axis.from) / (axis.to - axis.from)) * (right - left);
  const draw = () => {
    for (const tick of axis.ticks) {
      paper.line([x(tick), top + HEAD_MM], [x(tick), foot], 0.1);
      const iso = new Date(tick * MS_PER_MINUTE).toISOString();
      paper.text(look.hour(iso), [x(tick), foot + 1], { size: 8.5, align: 'center' });
    }
    sitting.entries.forEach(({ at }, i) => {
      const place = x(minutesAt(at));
      paper.line([place, top + 4], [place, foot], 0.25, [1, 0.8]);
      paper.text(`${i + 1}`, [place, top + (i % 2) * 1.6 - 1], { size: 8.5, face: 'bold', align: 'center' });
    });
    lanes.forEach((lane, i) => {
      strip({ paper, top: top + HEAD_MM + i * STRIP_MM, left, right, x }, lane, sitting, look.species);
    });
  };
  paper.part('Figure', draw, 'The readings as lines over time; the table below holds the same figures');
}

function strip(plot: Plot, lane: Lane, { readings }: ChartSitting, species: string): void {
  const { paper, top, left, right, x } = plot;
  const read = readings.flatMap(({ at, [lane.key]: value }) => (value === null ? [] : [{ at, value }]));
  const usual = usualOf(species, lane.key);
  const [low, high] = laneSpan(
    read.map(({ value }) => value),
    usual,
    lane.step,
  );
  const y = (value: number) => top + STRIP_MM - PAD_MM - ((value - low) / (high - low)) * (STRIP_MM - 2 * PAD_MM);
  paper.line([paper.left, top], [paper.right, top], 0.15);
  for (const { entry } of usual) {
    const box = [
      [left, y(entry.high)],
      [right, y(entry.high)],
      [right, y(entry.low)],
      [left, y(entry.low)],
    ] as const;
    if (entry.high > entry.low) paper.hatch(box, 2.5, 0.08);
    paper.path(box, { line: 0.15, dash: [1, 1], grey: true }, true);
  }
  paper.text(`${lane.word} ${lane.unit}`, [paper.left, top + 1], { size: 9.5, face: 'strong' });
  const weak = usual.some(({ isWeak }) => isWeak) ? ', weak source' : '';
  if (usual.length > 0)
    paper.text(`usual ${usual.map(usualWords).join('; ')}${weak}`, [paper.left, top + 5.5], {
      size: 8.5,
      width: WORDS_MM - 2,
    });
  for (const [value, at] of [
    [high, top + 0.6],
    [low, top + STRIP_MM - 4],
  ] as const)
    paper.text(value.toFixed(lane.decimals), [paper.right, at], { size: 8.5, align: 'right' });
  const points = read.map(({ at, value }) => [x(minutesAt(at)), y(value)] as const);
  if (points.length > 1) paper.path(points, { line: 0.4 });
  for (const point of points) paper.ellipse(point, DOT_MM, DOT_MM, { fill: 'black' });
}
