/** The bone cut at one pin, enlarged: both walls, the pin, and the room left beside the IM pin. */
import type { SectionFigure } from '@bonewright/construct';
import type { Paper, Point } from '../paper/paper.ts';
import { figure as digits } from './words.ts';

const ROOM_MM = 30;

/** Draws the section in a box whose top centre is given, with its words below. */
export function sectionDrawing(paper: Paper, section: SectionFigure, [x, y]: Point, widthMm: number): void {
  const scale = Math.max(1, Math.floor(ROOM_MM / Math.max(...section.outerMm)));
  const centre: Point = [x, y + 6 + ROOM_MM / 2];
  paper.part('P', () => paper.text('cranial', [x, y], { size: 8.5, align: 'center' }));
  paper.part('Figure', () => draw(paper, section, centre, scale), `section of the bone at P${section.pin}`);
  const right: Point = [x + (section.outerMm[0] / 2) * scale + 1, centre[1] + ROOM_MM / 2 - 2];
  paper.part('P', () => paper.text('medial', right, { size: 8.5 }));
  const words = [`${scale}:1, not for measuring`, roomWords(section)].filter(Boolean).join('. ');
  const top = centre[1] + ROOM_MM / 2 + 4;
  const left: Point = [x - widthMm / 2, top];
  paper.part('P', () => paper.text(words, left, { size: 8.5, align: 'center', width: widthMm }));
}

function roomWords({ pin, im }: SectionFigure): string {
  if (!im) return '';
  const side = im.centre[1] >= 0 ? 'caudal' : 'cranial';
  return im.roomMm >= 0
    ? `P${pin} passes the IM pin on its ${side} side, ${digits(im.roomMm, 2)} mm to spare`
    : `P${pin} and the IM pin need ${digits(-im.roomMm, 2)} mm more room than the canal has`;
}

function draw(paper: Paper, section: SectionFigure, [x, y]: Point, scale: number): void {
  const [a, b] = section.outerMm.map((d) => (d / 2) * scale) as [number, number];
  paper.ellipse([x, y], a, b, { line: 0.4, fill: 'white' });
  paper.hatch(ellipsePoints([x, y], a, b), 1.5);
  if (section.canalMm) {
    const [c, d] = section.canalMm.map((v) => (v / 2) * scale) as [number, number];
    paper.ellipse([x, y], c, d, { line: 0.3, fill: 'white' });
  }
  if (section.im) {
    const r = (section.im.diameterMm / 2) * scale;
    paper.ellipse([x + section.im.centre[0] * scale, y - section.im.centre[1] * scale], r, r, { fill: 'black' });
  }
  pinBar(paper, section, [x, y], scale, a);
}

const ellipsePoints = ([x, y]: Point, a: number, b: number): Point[] =>
  Array.from({ length: 48 }, (_, i) => {
    const t = (2 * Math.PI * i) / 48;
    return [x + a * Math.cos(t), y + b * Math.sin(t)];
  });

function pinBar(paper: Paper, section: SectionFigure, [x, y]: Point, scale: number, a: number): void {
  const angle = (section.aboutDeg * Math.PI) / 180;
  const along: Point = [Math.cos(angle), -Math.sin(angle)];
  const half = (section.pinDiameterMm / 2) * scale;
  const corner = (t: number, side: number): Point => [
    x + along[0] * t - along[1] * half * side,
    y + along[1] * t + along[0] * half * side,
  ];
  const [far, near] = [-a - 2, a + 5];
  paper.path([corner(far, 1), corner(near, 1), corner(near, -1), corner(far, -1)], { line: 0.3, fill: 'white' }, true);
}
