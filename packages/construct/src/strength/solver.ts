/**
 * One construct made ready for solving at many figures: its frame compiled once, all five load cases on one
 * factorisation, the places where it can fail named.
 */

import { fragmentsOf } from '@bonewright/bone';
import { InputError } from '@bonewright/fault';
import type { CompiledFrame } from '@bonewright/frame';
import type { Case, Construct } from '../model/case-file.ts';
import { type Figures, nominalFigures } from '../model/figures.ts';
import { LOADS } from '../model/plan.ts';
import { buildParts, loadOf } from '../to-frame/build.ts';
import { compiledFrame } from '../to-frame/compiled.ts';
import { type Layout, layOut } from '../to-frame/layout.ts';
import { type Mesh, meshOf } from '../to-frame/mesh.ts';
import { numberSink } from '../to-frame/sink.ts';
import { strengthsOf } from './judge.ts';
import { type Place, placesOf } from './places.ts';
import { type Sections, sectionsOf } from './sections.ts';

export interface ConstructSolver {
  readonly nominal: Figures;
  /** Middle of the fracture along s. */
  readonly middleMm: number;
  readonly mesh: Mesh;
  readonly places: readonly Place[];
  /** Index into the frame's members, one a place. */
  readonly placeMembers: readonly number[];
  readonly frame: CompiledFrame;
  /** Solves all loads at those figures; the frame's outputs hold until any construct of the same parts is solved. */
  readonly solve: (figures: Figures) => Solution;
}

export interface Solution {
  readonly figures: Figures;
  readonly layout: Layout;
  readonly sections: Sections;
  /** What each place bears, MPa. */
  readonly strengths: readonly number[];
}

/**
 * Makes a checked construct ready at its middle figures, or at others of the same construct. Throws InputError where a
 * fragment is held by nothing.
 */
export function constructSolver(
  patientCase: Case,
  construct: Construct,
  nominal: Figures = nominalFigures(patientCase, construct),
): ConstructSolver {
  const layout = layOut(patientCase, construct, nominal);
  checkHeld(construct, layout);
  const mesh = meshOf(patientCase, construct, nominal, layout);
  const places = placesOf(patientCase, construct, nominal, layout, mesh);
  const frame = compiledFrame(patientCase, mesh, layout, nominal);
  const members = new Map(frame.members.map((name, i) => [name, i]));
  const nodes = new Map(frame.nodes.map((name, i) => [name, i]));
  const solve = (figures: Figures): Solution => {
    const laid = figures === nominal ? layout : layOut(patientCase, construct, figures);
    buildParts(numberSink(frame), patientCase, mesh, laid, figures);
    writeLoads(frame, nodes, laid, figures);
    frame.solve();
    return { figures, layout: laid, sections: sectionsOf(figures, laid), strengths: strengthsOf(places, figures) };
  };
  const { middleMm } = fragmentsOf(nominal.profile.lengthMm, patientCase.fracture);
  const placeMembers = places.map((p) => memberAt(members, p.member));
  return { nominal, middleMm, mesh, places, placeMembers, frame, solve };
}

function memberAt(members: ReadonlyMap<string, number>, name: string): number {
  const at = members.get(name);
  if (at === undefined) throw new Error(`the frame has no member "${name}"`);
  return at;
}

function writeLoads(frame: CompiledFrame, nodes: ReadonlyMap<string, number>, layout: Layout, figures: Figures): void {
  const { loads } = frame.inputs;
  loads.fill(0);
  LOADS.forEach((load, l) => {
    for (const [node, six] of Object.entries(loadOf(load, layout.aboutDeg, figures))) {
      loads.set(six, 6 * (l * frame.nodes.length + nodes.get(node)!));
    }
  });
}

/** Each fragment needs a pin, or the IM pin through it. */
function checkHeld(construct: Construct, { pins }: Layout): void {
  for (const fragment of ['proximal', 'distal'] as const) {
    if (construct.im || pins.some((pin) => pin.fragment === fragment)) continue;
    throw new InputError(
      `no pin holds the ${fragment} fragment`,
      'construct.pins',
      'put a pin on each side of the fracture',
    );
  }
}
