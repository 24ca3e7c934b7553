/** The wire of the handbook figures: round, 1.6 mm, steel of 193 GPa, Poisson's ratio 0.3. */
import { readFrame, solveFrame } from '../index.ts';
import type { FrameModel, LoadResult } from '../model/frame-model.ts';

export const E = 193000;
export const G = E / 2.6;
export const D = 1.6;
export const A = (Math.PI * D ** 2) / 4;
export const I = (Math.PI * D ** 4) / 64;
export const J = 2 * I;

const MATERIALS = { steel: { E, nu: 0.3 } };
const SECTIONS = { wire: { shape: 'round', od: D } };

/** A run of wire along x through the places given, with what is laid on it. */
export function wireAlongX(placesMm: readonly number[], more: object): object {
  const nodes = Object.fromEntries(placesMm.map((x, i) => [`n${i}`, [x, 0, 0]]));
  const members = Object.fromEntries(
    placesMm.slice(1).map((_, i) => [`m${i}`, { from: `n${i}`, to: `n${i + 1}`, section: 'wire', material: 'steel' }]),
  );
  return { beam: 'euler', nodes, members, materials: MATERIALS, sections: SECTIONS, ...more };
}

/** Solves a frame of one load case. */
export function solveOne(model: object): LoadResult {
  return onlyLoad(readFrame(model));
}

export function onlyLoad(model: FrameModel): LoadResult {
  const [result] = Object.values(solveFrame(model).loads);
  if (!result) throw new Error('no load case');
  return result;
}

/** One number of a node's six. */
export function at(group: LoadResult['displacements'], node: string, k: number): number {
  const value = group[node]?.[k];
  if (value === undefined) throw new Error(`no ${k} at ${node}`);
  return value;
}
