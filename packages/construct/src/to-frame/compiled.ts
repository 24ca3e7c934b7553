/**
 * The compiled frame of a construct. A frame of the same parts, whatever their sizes and places, is compiled once: a
 * dragged pin or a candidate of the search finds the last one and writes its own numbers over it.
 */
import { fragmentsOf } from '@bonewright/bone';
import { type CompiledFrame, compileFrame } from '@bonewright/frame';
import type { Case } from '../model/case-file.ts';
import type { Figures } from '../model/figures.ts';
import { LOADS } from '../model/plan.ts';
import { frameModel, SUPPORTS } from './build.ts';
import type { Layout } from './layout.ts';
import type { Mesh } from './mesh.ts';

/** Compiled frames by their parts, the one used last at the end. Numbers in them mean nothing between two solves. */
const kept = new Map<string, CompiledFrame>();
const MOST_KEPT = 12;

const OPTIONS = {
  supportSets: SUPPORTS,
  supportSetOf: Object.fromEntries(LOADS.map((load) => [load, load])),
};

/** A frame of these parts with all five load cases; its numbers are to be written before it is solved. */
export function compiledFrame(patientCase: Case, mesh: Mesh, layout: Layout, figures: Figures): CompiledFrame {
  const key = partsOf(patientCase, mesh, layout, figures);
  const frame = kept.get(key) ?? compileFrame(frameModel(patientCase, mesh, layout, figures), OPTIONS);
  kept.delete(key);
  kept.set(key, frame);
  const [oldest] = kept.keys();
  if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
  return frame;
}

/** Everything that decides which nodes and members there are, and the one direction that is fixed in them. */
function partsOf(patientCase: Case, mesh: Mesh, layout: Layout, figures: Figures): string {
  const { facesMeet } = fragmentsOf(figures.profile.lengthMm, patientCase.fracture);
  return JSON.stringify([
    mesh.proximal.length,
    mesh.distal.length,
    mesh.pinNodes,
    mesh.columns,
    mesh.imSites.map((site) => site.name),
    layout.pins.map((pin) => pin.cortices),
    layout.aboutDeg,
    figures.columns.map((column) => column.side),
    figures.slack > 0,
    figures.callusYoungMPa !== null,
    facesMeet,
  ]);
}
