/** The verdict marks: ring, half-filled diamond, barred square. Shape first, so that grey copies still rank them. */
import type { Verdict } from '@bonewright/construct';
import type { Paper, Point } from '../paper/paper.ts';

const SIZE_MM = 3.2;
const R = SIZE_MM / 2;

type Draw = (paper: Paper, at: Point) => void;

const ring: Draw = (paper, at) => paper.ellipse(at, R * 0.85, R * 0.85, { line: 0.5 });

const diamond: Draw = (paper, [x, y]) => {
  const [right, bottom, left, top]: Point[] = [
    [x + R, y],
    [x, y + R],
    [x - R, y],
    [x, y - R],
  ];
  paper.path([right!, bottom!, left!], { fill: 'black' }, true);
  paper.path([right!, bottom!, left!, top!], { line: 0.4 }, true);
};

const barredSquare: Draw = (paper, [x, y]) => {
  paper.rect([x - R, y - R], SIZE_MM, SIZE_MM, { fill: 'black' });
  paper.rect([x - R * 0.6, y - 0.3], SIZE_MM * 0.6, 0.6, { fill: 'white' });
};

const MARKS: Record<Verdict, Draw> = { good: ring, watch: diamond, stop: barredSquare };

/** Draws the mark centred on a point. */
export const mark = (paper: Paper, verdict: Verdict, at: Point): void => MARKS[verdict](paper, at);
