/** A model made ready for solving many times: figures in, motions and member end forces out. */
import { InputError } from '@bonewright/fault';
import { readInputs } from '../assemble/inputs.ts';
import { readTopology, type Topology } from '../assemble/topology.ts';
import type { CompiledFrame, CompileOptions } from '../model/compiled-frame.ts';
import type { FrameModel } from '../model/frame-model.ts';
import { buildEngine } from './engine.ts';
import { referenceKernel } from './kernel.ts';
import { outputWriter } from './outputs.ts';
import { countMultiplyAdds } from './program.ts';
import { wasmKernel } from './wasm-kernel.ts';

const MOST_LOADED = 2;

/**
 * Compiles a sound model (`readFrame`, or built by code to the same rules). Throws InputError for an unknown support set
 * and for sets that differ on a node that follows another.
 */
export function compileFrame(model: FrameModel, options: CompileOptions = {}): CompiledFrame {
  const topology = readTopology(model);
  const inputs = readInputs(model);
  const sets = options.supportSets ?? { supports: model.supports };
  const setNames = Object.keys(sets);
  const setOf = Int32Array.from(topology.loads, (load) => {
    const name = options.supportSetOf?.[load] ?? setNames[0] ?? '';
    const index = setNames.indexOf(name);
    if (index < 0)
      throw new InputError(`there is no support set "${name}"`, `supportSetOf.${load}`, 'name one of them');
    return index;
  });
  const makeKernel = options.kernel === 'typescript' ? referenceKernel : wasmKernel;
  const engine = buildEngine(topology, inputs, {
    sets: Object.values(sets),
    setOf,
    makeKernel,
    loadedNodes: loadedNodes(model, topology),
  });
  const { outputs, write } = outputWriter(engine, inputs);
  return {
    nodes: topology.nodes,
    members: topology.members.names,
    springs: topology.springs.names,
    contacts: topology.contacts.names,
    sleeves: topology.sleeves.names,
    loads: topology.loads,
    inputs,
    outputs,
    multiplyAdds: countMultiplyAdds(engine.program, topology.loads.length),
    solve() {
      engine.condense();
      engine.solveLoads();
      write();
    },
  };
}

/** The nodes that the model loads, unless they are so many that keeping them to the end would cost more than it saves. */
function loadedNodes(model: FrameModel, { nodes }: Topology): number[] {
  const names = new Set(Object.values(model.loads).flatMap((load) => Object.keys(load)));
  return names.size > MOST_LOADED ? [] : Array.from(names, (name) => nodes.indexOf(name));
}
