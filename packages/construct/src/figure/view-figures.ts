/** A construct as it is built for the solver, projected into the two views of the films. */
import { fragmentsOf, sectionAt } from '@bonewright/bone';
import type { Vec3 } from '@bonewright/frame';
import type { Case, Construct } from '../model/case-file.ts';
import { type Figures, nominalFigures } from '../model/figures.ts';
import { imLine, imTipMm } from '../to-frame/im-line.ts';
import { alongPin, type Layout, layOut, type PinLayout, tissueAt } from '../to-frame/layout.ts';
import type { FigureFragment, FigurePoint, ViewFigure, ViewName } from './view-figure.ts';

const STEP_MM = 0.5;
const VIEWS: readonly ViewName[] = ['craniocaudal', 'mediolateral'];

/** Both views of a construct, craniocaudal first. The case and construct must have been checked. */
export function viewFigures(patientCase: Case, construct: Construct): readonly ViewFigure[] {
  const figures = nominalFigures(patientCase, construct);
  const layout = layOut(patientCase, construct, figures);
  return VIEWS.map((view, axis) => viewFigure(view, axis as 0 | 1, patientCase, figures, layout));
}

type Flat = (point: Vec3) => FigurePoint;

function viewFigure(view: ViewName, axis: 0 | 1, patientCase: Case, figures: Figures, layout: Layout): ViewFigure {
  const flat: Flat = (p) => [p[0], p[axis + 1]!];
  const parts = {
    fragments: fragments(patientCase, figures, axis),
    skin: skin(patientCase, figures, layout, axis),
    pins: layout.pins.map((pin) => pinRod(pin, figures, flat)),
    columns: layout.columns.map((_, c) => columnRod(layout, figures, c, flat)),
    im: imRod(patientCase, figures, layout, flat),
  };
  const { lengthMm } = patientCase.bone;
  return { view, lengthMm, keepOuts: keepOuts(patientCase), ...parts, extent: extentOf(lengthMm, parts) };
}

function fragments({ bone, fracture }: Case, { profile }: Figures, axis: 0 | 1): FigureFragment[] {
  const { proximal, distal } = fragmentsOf(bone.lengthMm, fracture);
  const side =
    (pair: 'outerMm' | 'canalMm', sign: 1 | -1) =>
    (s: number): FigurePoint => {
      const section = sectionAt(profile, s);
      return [s, section.offsetMm[axis] + (sign * section[pair][axis]) / 2];
    };
  const isMeasured = profile.canalBasis !== 'usual bore of the class';
  return [proximal, distal].map(([from, to]) => {
    const places = steps(from, to);
    const canal = isMeasured ? [[places.map(side('canalMm', -1)), places.map(side('canalMm', 1))] as const] : [];
    return { outer: [places.map(side('outerMm', -1)), places.map(side('outerMm', 1))], canal };
  });
}

function steps(from: number, to: number): number[] {
  const n = Math.max(1, Math.round((to - from) / STEP_MM));
  return Array.from({ length: n + 1 }, (_, i) => from + ((to - from) * i) / n);
}

function keepOuts({ bone, keepOut, fracture }: Case): ViewFigure['keepOuts'] {
  const ends = keepOut
    ? [
        { fromMm: 0, toMm: keepOut.proximalMm, why: 'proximal joint' },
        { fromMm: bone.lengthMm - keepOut.distalMm, toMm: bone.lengthMm, why: 'distal joint' },
      ]
    : [];
  const fissures = fracture.fissuresMm.map(([fromMm, toMm]) => ({ fromMm, toMm, why: 'fissure' }));
  return [...ends, { fromMm: fracture.fromMm, toMm: fracture.toMm, why: 'fracture' }, ...fissures];
}

/** The skin over the near wall, where the frame's plane is not square to this view. */
function skin(patientCase: Case, { profile }: Figures, { aboutDeg }: Layout, axis: 0 | 1): FigurePoint[][] {
  const angle = (aboutDeg * Math.PI) / 180;
  const share = axis === 0 ? Math.cos(angle) : Math.sin(angle);
  if (!patientCase.softTissueMm?.length || Math.abs(share) < 1 / 2) return [];
  const sense = Math.sign(share);
  return [
    steps(0, patientCase.bone.lengthMm).map((s) => {
      const { offsetMm, outerMm } = sectionAt(profile, s);
      return [s, offsetMm[axis] + sense * (outerMm[axis] / 2 + tissueAt(patientCase, s))];
    }),
  ];
}

function pinRod(pin: PinLayout, figures: Figures, flat: Flat): ViewFigure['pins'][number] {
  const { diameterMm } = figures.pins[pin.index]!;
  const [from, to] = pinEndsMm(pin, diameterMm);
  return {
    sMm: pin.crossing[0],
    diameterMm,
    line: [flat(alongPin(pin, from)), flat(alongPin(pin, to))],
    nearWall: flat(alongPin(pin, pin.nearOuterMm)),
  };
}

/** From its tip, half a diameter proud of the far wall or at the far column's outer face, to the near column's outer face. */
export function pinEndsMm(pin: PinLayout, diameterMm: number): readonly [number, number] {
  const faces = pin.entries.map(({ surfaceMm, embeddedMm }) => surfaceMm + Math.sign(surfaceMm) * embeddedMm);
  const tip = pin.cortices === 2 ? pin.farOuterMm - diameterMm / 2 : pin.nearOuterMm - diameterMm * 2;
  return [Math.min(tip, ...faces), Math.max(pin.nearOuterMm, ...faces)];
}

function columnRod(layout: Layout, figures: Figures, c: number, flat: Flat): ViewFigure['columns'][number] {
  const { fromMm, toMm, side, tie } = layout.columns[c]!;
  const stops = [...layout.pins.map((pin) => pin.entries[c]!.axis), ...(tie ? [tie] : [])];
  const line = stops.toSorted((a, b) => a[0] - b[0]).map(flat);
  const radius = figures.columns[c]!.diameterMm / 2;
  const [first, last] = [line[0]!, line.at(-1)!];
  const middle = line.slice(1, -1);
  return {
    side,
    diameterMm: 2 * radius,
    line: [
      stretched(first, line[1] ?? last, fromMm + radius),
      ...middle,
      stretched(last, line.at(-2) ?? first, toMm - radius),
    ],
  };
}

/** The end of a line moved along its last piece to another s. */
function stretched(end: FigurePoint, before: FigurePoint, sMm: number): FigurePoint {
  const run = end[0] - before[0];
  const slope = run === 0 ? 0 : (end[1] - before[1]) / run;
  return [sMm, end[1] + (sMm - end[0]) * slope];
}

function imRod(patientCase: Case, figures: Figures, { imBend, columns }: Layout, flat: Flat): ViewFigure['im'] {
  if (!figures.im) return null;
  const { at } = imLine(patientCase, figures);
  const { diameterMm } = figures.im;
  const tip = imTipMm(patientCase, figures);
  const place = (s: number): Vec3 => [s, ...at(s)];
  if (!imBend) return { diameterMm, line: [flat(place(-2 * diameterMm)), flat(place(tip))], bend: null };
  const held = imBend.surfaceMm + imBend.embeddedMm / 2;
  const inColumn = alongPin(imBend, held);
  const tail: Vec3 = [Math.max(inColumn[0], (columns[0]?.fromMm ?? 0) + diameterMm * 2), inColumn[1], inColumn[2]];
  return {
    diameterMm,
    line: [flat(imBend.crossing), flat(place(tip))],
    bend: [flat(imBend.crossing), flat(inColumn), flat(tail)],
  };
}

function extentOf(
  lengthMm: number,
  parts: Pick<ViewFigure, 'fragments' | 'pins' | 'columns' | 'im' | 'skin'>,
): ViewFigure['extent'] {
  const boxes = [
    ...parts.fragments.flatMap((f) => f.outer).map((line) => boxOf(line, 0)),
    ...parts.pins.map((p) => boxOf(p.line, p.diameterMm / 2)),
    ...parts.columns.map((c) => boxOf(c.line, c.diameterMm / 2)),
    ...parts.skin.map((line) => boxOf(line, 0)),
    ...(parts.im ? [boxOf([...parts.im.line, ...(parts.im.bend ?? [])], parts.im.diameterMm / 2)] : []),
  ];
  const least = (i: number) => Math.min(...boxes.map((b) => b[i]!));
  const most = (i: number) => Math.max(...boxes.map((b) => b[i]!));
  return { s: [Math.min(0, least(0)), Math.max(lengthMm, most(1))], w: [least(2), most(3)] };
}

function boxOf(line: readonly FigurePoint[], around: number): readonly [number, number, number, number] {
  const s = line.map((p) => p[0]);
  const w = line.map((p) => p[1]);
  return [Math.min(...s) - around, Math.max(...s) + around, Math.min(...w) - around, Math.max(...w) + around];
}
