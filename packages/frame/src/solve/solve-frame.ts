/** A model solved and its results named. */
import { InputError } from '@bonewright/fault';
import { readInputs } from '../assemble/inputs.ts';
import { sectionProperties } from '../assemble/section.ts';
import { peakStressMPa } from '../assemble/stress.ts';
import { readTopology } from '../assemble/topology.ts';
import type { FrameInputs, FrameOutputs } from '../model/compiled-frame.ts';
import type { FrameModel, FrameResult, LoadResult, Vec6 } from '../model/frame-model.ts';
import { criticalFactors } from './buckling.ts';
import { buildEngine, type Engine } from './engine.ts';
import { solveExactly } from './exact-solution.ts';
import { outputWriter } from './outputs.ts';
import { findReactions } from './reactions.ts';

/**
 * Solves every load case of a sound model (`readFrame`), contacts and sleeves in their true state.
 * Throws InputError where the frame can move freely (naming a node and the direction) or figures outgrow numbers.
 */
export function solveFrame(model: FrameModel): FrameResult {
  const topology = readTopology(model);
  const inputs = readInputs(model);
  const engine = buildEngine(topology, inputs, {
    sets: [model.supports],
    setOf: new Int32Array(topology.loads.length),
  });
  const { outputs, write } = outputWriter(engine, inputs);
  engine.condense();
  solveExactly(engine, inputs);
  write();
  refuseOverflow(outputs);
  const factors = model.buckling ? criticalFactors(engine, inputs, outputs, model.supports) : null;
  const loads = topology.loads.map((name, load) => {
    const result = nameResult({ model, engine, inputs, outputs }, load);
    return [name, factors ? { ...result, criticalFactor: factors[load] ?? null } : result] as const;
  });
  return { loads: Object.fromEntries(loads) };
}

interface Solved {
  readonly model: FrameModel;
  readonly engine: Engine;
  readonly inputs: FrameInputs;
  readonly outputs: FrameOutputs;
}

function nameResult({ model, engine, inputs, outputs }: Solved, load: number): LoadResult {
  const { displacements, memberEnds, contactOpeningMm, contactForceN, sleeveOffsetMm, sleeveForceN } = outputs;
  const { nodes, members, contacts, sleeves } = engine.topology;
  const named = <T>(names: readonly string[], read: (at: number, name: string) => T): Record<string, T> =>
    Object.fromEntries(names.map((name, i) => [name, read(load * names.length + i, name)]));
  const reactions = findReactions(engine, inputs, outputs, model.supports, load);
  return {
    displacements: named(nodes, (i) => vec6(displacements, i * 6)),
    reactions: Object.fromEntries([...reactions].map(([name, six]) => [name, vec6(six, 0)])),
    members: named(members.names, (i, name) => ({
      from: vec6(memberEnds, i * 12),
      to: vec6(memberEnds, i * 12 + 6),
      peakStressMPa: peak(model, name, memberEnds, i * 12),
    })),
    contacts: named(contacts.names, (i) => ({ openingMm: contactOpeningMm[i]!, forceN: contactForceN[i]! })),
    sleeves: named(sleeves.names, (i) => ({ offsetMm: sleeveOffsetMm[i]!, forceN: sleeveForceN[i]! })),
  };
}

function peak(model: FrameModel, name: string, ends: Float64Array, at: number): number | null {
  const section = model.sections[model.members[name]?.section ?? ''];
  if (!section) throw new Error(`member "${name}" has no section`);
  return peakStressMPa(sectionProperties(section), ends, at);
}

function vec6(values: Float64Array, at: number): Vec6 {
  return [values[at]!, values[at + 1]!, values[at + 2]!, values[at + 3]!, values[at + 4]!, values[at + 5]!];
}

function refuseOverflow(outputs: FrameOutputs): void {
  if (Object.values(outputs).every((values) => values.every(Number.isFinite))) return;
  throw new InputError('the results are too large for numbers', 'loads', 'check the loads and sizes and their units');
}
