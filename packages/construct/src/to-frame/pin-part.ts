/**
 * Fixator pins and columns. A pin is flexible from the far wall through the near one to a depth inside each column;
 * from there a rigid joins it to the column's axis. At each wall a joint ties it to a rigid arm from the bone's axis.
 */
import type { Section } from '@bonewright/frame';
import type { Figures, PinFigures, RodFigures } from '../model/figures.ts';
import { cortexJoint, JOINT_MATERIAL, jointLengthMm, jointSection, puttyJoint } from './joints.ts';
import { alongPin, type Layout, type PinLayout } from './layout.ts';
import { type Mesh, stopOfPin } from './mesh.ts';
import type { Elastic, FrameSink } from './sink.ts';
import { plus, radial } from './vectors.ts';

export const pinName = (index: number): string => `P${index + 1}`;

/** Members of a pin: inside the bone, and free between a wall and a column. */
export const insideName = (index: number): string => `${pinName(index)}.inside`;
export const freeName = (index: number, column: number): string => `${pinName(index)}.free.C${column + 1}`;
export const jointName = (index: number, side: 'near' | 'far'): string => `${pinName(index)}.${side}.joint`;
export const columnPieceName = (stop: string): string => `column.${stop}`;

export function rodSection({ diameterMm, boreMm }: Pick<RodFigures, 'diameterMm' | 'boreMm'>): Section {
  return boreMm > 0 ? { shape: 'tube', od: diameterMm, id: boreMm } : { shape: 'round', od: diameterMm };
}

export const rodMaterial = (name: string, { youngMPa, poisson }: RodFigures): Elastic => ({
  name,
  E: youngMPa,
  nu: poisson,
});

/** Adds every pin that crosses bone. */
export function addPins(sink: FrameSink, mesh: Mesh, layout: Layout, figures: Figures): void {
  for (const pin of layout.pins) {
    const boneNode = mesh.pinNodes[pin.index];
    if (boneNode) addPin(sink, mesh, pin, boneNode, figures);
  }
}

function addPin(sink: FrameSink, mesh: Mesh, pin: PinLayout, boneNode: string, figures: Figures): void {
  const rod = figures.pins[pin.index]!;
  const name = pinName(pin.index);
  const material = rodMaterial(name, rod);
  const reachesFar = pin.cortices === 2 || figures.columns.some((c) => c.side === 'far');
  addWall(sink, pin, boneNode, figures, 'near');
  if (reachesFar) {
    addWall(sink, pin, boneNode, figures, 'far');
    const core = { diameterMm: rod.coreMm, boreMm: rod.boreMm };
    sink.member(insideName(pin.index), `${name}.far`, `${name}.near`, rodSection(core), material);
  }
  pin.entries.forEach((entry, c) => {
    const wall = figures.columns[c]!.side;
    const end = heldName(pin.index, c);
    addColumnEnd(sink, end, stopOfPin(mesh, c, pin.index), figures, rod, pin, entry.heldMm);
    sink.member(freeName(pin.index, c), `${name}.${wall}`, end, rodSection(rod), material);
  });
}

const heldName = (index: number, column: number): string => `${pinName(index)}.C${column + 1}`;

/** The pin's node at mid wall, and the joint to its arm from the bone's axis. */
function addWall(sink: FrameSink, pin: PinLayout, boneNode: string, figures: Figures, side: 'near' | 'far'): void {
  const rod = figures.pins[pin.index]!;
  const node = `${pinName(pin.index)}.${side}`;
  const middleMm = side === 'near' ? pin.nearMiddleMm : pin.farMiddleMm;
  const joint = jointLengthMm(rod.diameterMm);
  sink.node(node, alongPin(pin, middleMm));
  sink.node(`${node}.wall`, alongPin(pin, middleMm - joint));
  sink.rigid(`${node}.arm`, boneNode, `${node}.wall`);
  const section = jointSection(cortexJoint(figures, rod, pin[side]), joint);
  sink.member(`${node}.joint`, `${node}.wall`, node, section, JOINT_MATERIAL);
}

/** Where a rod is held inside a column: a follower of the column's axis, with the putty's seat between if there is one. */
export function addColumnEnd(
  sink: FrameSink,
  end: string,
  axisNode: string,
  figures: Figures,
  rod: PinFigures | RodFigures,
  line: Pick<PinLayout, 'crossing' | 'direction'>,
  heldMm: number,
): void {
  const seat = puttyJoint(figures, rod);
  sink.node(end, alongPin(line, heldMm));
  if (!seat) {
    sink.rigid(`${end}.arm`, axisNode, end);
    return;
  }
  const joint = jointLengthMm(rod.diameterMm);
  sink.node(`${end}.putty`, plus(alongPin(line, heldMm), line.direction, joint));
  sink.rigid(`${end}.arm`, axisNode, `${end}.putty`);
  sink.member(`${end}.joint`, end, `${end}.putty`, jointSection(seat, joint), JOINT_MATERIAL);
}

/** Adds each column as a beam from stop to stop along its axis. */
export function addColumns(sink: FrameSink, mesh: Mesh, layout: Layout, figures: Figures): void {
  mesh.columns.forEach((stops, c) => {
    const rod = figures.columns[c]!;
    for (const stop of stops) {
      const tie = layout.columns[c]!.tie;
      sink.node(stop.name, stop.what === 'im' ? tie! : layout.pins[stop.what]!.entries[c]!.axis);
    }
    stops.slice(1).forEach((to, i) => {
      const material = rodMaterial(`column${c + 1}`, rod);
      const outward = radial(layout.aboutDeg);
      sink.member(columnPieceName(to.name), stops[i]!.name, to.name, rodSection(rod), material, outward);
    });
  });
}
