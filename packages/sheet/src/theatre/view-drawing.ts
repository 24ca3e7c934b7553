/** One view of the plan at exactly 1:1: proximal end up, with a ruler along the bone. */
import type { FigurePoint, FigureRod, ViewFigure } from '@bonewright/construct';
import type { Paper, Point } from '../paper/paper.ts';

const LINE = { bone: 0.4, canal: 0.18, skin: 0.18, rule: 0.18 };
const RULER_GAP_MM = 9;

/** Where a figure's [s, w] falls on the page: 1 mm is 1 mm, w positive to the right or to the left. */
export interface Placement {
  readonly originMm: Point;
  readonly sense: 1 | -1;
}

type OnPage = (p: FigurePoint) => Point;

const placed =
  ({ originMm: [x, y], sense }: Placement): OnPage =>
  ([s, w]) => [x + sense * w, y + s];

/** Draws a view; returns nothing: what it needs of room is `figure.extent`. */
export function viewDrawing(paper: Paper, figure: ViewFigure, placement: Placement): void {
  const at = placed(placement);
  paper.part('Figure', () => drawAll(paper, figure, at, placement), description(figure));
  for (const [i, pin] of figure.pins.entries()) {
    pinLabel(paper, `P${i + 1}`, pin, figure.extent.w[1], at, placement.sense);
  }
}

function description({ view, lengthMm, pins, columns }: ViewFigure): string {
  const where = pins.map((p, i) => `P${i + 1} at ${p.sMm.toFixed(1)} mm`).join(', ');
  return `${view} view at 1:1 of a bone ${lengthMm.toFixed(1)} mm long, ${where}, ${columns.length} column${columns.length === 1 ? '' : 's'}`;
}

function drawAll(paper: Paper, figure: ViewFigure, at: OnPage, placement: Placement): void {
  keepOuts(paper, figure, at);
  for (const column of figure.columns)
    paper.path(capsule(column, at), { line: LINE.bone, ...dashIf(column.side === 'far') }, true);
  for (const { outer, canal } of figure.fragments) {
    paper.path(closed(outer, at), { line: LINE.bone, fill: 'white' }, true);
    for (const pair of canal) for (const wall of pair) paper.path(wall.map(at), { line: LINE.canal });
  }
  for (const line of figure.skin) paper.path(line.map(at), { line: LINE.skin, dash: [2, 1.2], grey: true });
  if (figure.im) rods(paper, figure.im, at);
  for (const pin of figure.pins) paper.path(pin.line.map(at), { line: pin.diameterMm });
  ruler(paper, figure, placement);
}

const dashIf = (dashed: boolean) => (dashed ? { dash: [1.6, 1] } : {});

const closed = ([low, high]: readonly [readonly FigurePoint[], readonly FigurePoint[]], at: OnPage): Point[] =>
  [...low, ...[...high].reverse()].map(at);

function keepOuts(paper: Paper, { keepOuts: stretches, fragments }: ViewFigure, at: OnPage): void {
  const walls = fragments.flatMap((f) => f.outer.flat()).map(([, w]) => w);
  const [low, high] = [Math.min(...walls) - 1.5, Math.max(...walls) + 1.5];
  for (const { fromMm, toMm } of stretches) {
    paper.hatch(
      [
        [fromMm, low],
        [toMm, low],
        [toMm, high],
        [fromMm, high],
      ].map((p) => at(p as [number, number])),
    );
  }
}

/** The IM pin as two lines, with its bent end outside the bone. */
function rods(paper: Paper, { line, bend, diameterMm }: NonNullable<ViewFigure['im']>, at: OnPage): void {
  for (const points of [line, ...(bend ? [bend] : [])]) {
    paper.path(points.map(at), { line: diameterMm });
    paper.path(points.map(at), { line: Math.max(diameterMm - 0.36, 0.1), white: true });
  }
}

/** Outline of a straight rod with round ends, on the page. */
function capsule({ line, diameterMm }: FigureRod, at: OnPage): Point[] {
  const [a, b] = [at(line[0]!), at(line.at(-1)!)];
  const r = diameterMm / 2;
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const arc = (centre: Point, from: number): Point[] =>
    Array.from({ length: 13 }, (_, i) => {
      const t = from + (Math.PI * i) / 12;
      return [centre[0] + r * Math.cos(t), centre[1] + r * Math.sin(t)];
    });
  return [...arc(b, angle - Math.PI / 2), ...arc(a, angle + Math.PI / 2)];
}

/** Name and place of a pin beside everything drawn, so that labels stand in one line. */
function pinLabel(
  paper: Paper,
  name: string,
  { sMm, line }: ViewFigure['pins'][number],
  edgeMm: number,
  at: OnPage,
  sense: 1 | -1,
): void {
  const [x, y] = at([line.at(-1)![0], edgeMm]);
  const align = sense > 0 ? 'left' : 'right';
  const width = paper.textWidth(name, { face: 'bold', size: 10 });
  paper.part('P', () => paper.text(name, [x + sense * 1.5, y - 2.2], { face: 'bold', size: 10, align }));
  paper.part('P', () => paper.text(sMm.toFixed(1), [x + sense * (width + 3), y - 2.2], { size: 10, align }));
}

/** Ruler along the bone on the side away from the column: a stroke a millimetre, figures at tens. */
function ruler(paper: Paper, { lengthMm, extent }: ViewFigure, { originMm: [x0, y0], sense }: Placement): void {
  const x = x0 + sense * extent.w[0] - sense * RULER_GAP_MM;
  paper.line([x, y0], [x, y0 + lengthMm], LINE.rule);
  for (let s = 0; s <= lengthMm + 1e-9; s += 1) {
    const long = s % 10 === 0 ? 2.6 : s % 5 === 0 ? 1.8 : 1.1;
    paper.line([x, y0 + s], [x + sense * -long, y0 + s], LINE.rule);
    if (s % 10 === 0) {
      paper.text(String(s), [x - sense * 3.4, y0 + s - 1.9], { size: 8.5, align: sense > 0 ? 'right' : 'left' });
    }
  }
}
