/**
 * The kernel in WebAssembly. All programs share one memory, which belongs to the one that claimed it last; it is
 * synchronous, and a solve claims it and is done with it before another can.
 */

import { KERNEL_BASE64 } from './kernel.generated.ts';
import type { Kernel } from './kernel.ts';
import { type Memory, memoryBytes, placeMemory } from './memory.ts';
import type { Program } from './program.ts';
import { type Steps, SUSPECT } from './reference-kernel.ts';

const PAGE = 65536;

/** The functions of kernel/kernel.ts; addresses are in bytes. */
interface Exports {
  assemble(values: number, count: number, rows: number, stiffness: number, places: number, elements: number): void;
  eliminate(
    values: number,
    diagonal: number,
    inverse: number,
    steps: number,
    stepAt: number,
    from: number,
    to: number,
    suspect: number,
    shares: number,
  ): number;
  forward: Substitution;
  back: Substitution;
  deform(rows: number, x: number, amounts: number, columns: number, unknowns: number, elements: number): void;
}
type Substitution = (
  values: number,
  inverse: number,
  x: number,
  columns: number,
  steps: number,
  stepAt: number,
  from: number,
  to: number,
) => void;

interface Shared {
  readonly memory: WebAssembly.Memory;
  readonly exports: Exports;
  owner: object | null;
}

let shared: Shared | null = null;

/** A kernel for one program, with room for `columns` (even) load cases. */
export function wasmKernel(program: Program, columns: number): Kernel {
  shared ??= instantiate();
  const { exports, memory } = shared;
  const wasm = shared;
  const bytes = memoryBytes(program, columns);
  const self = {};
  let views: Memory | null = null;

  function claim(): boolean {
    if (wasm.owner === self) return false;
    const missing = bytes - memory.buffer.byteLength;
    if (missing > 0) memory.grow(Math.ceil(missing / PAGE));
    new Uint8Array(memory.buffer, 0, bytes).fill(0);
    views = placeMemory(program, columns, memory.buffer, 0);
    wasm.owner = self;
    return true;
  }

  function mine(): Memory {
    if (wasm.owner !== self || !views) throw new Error('the kernel works for another frame: claim it first');
    return views;
  }

  function substitute(run: Substitution, { from, to }: Steps): void {
    const { values, inverse, x, steps, stepAt } = mine();
    const [at, pivots, columnsAt] = [values.byteOffset, inverse.byteOffset, x.byteOffset];
    run(at, pivots, columnsAt, columns, steps.byteOffset, stepAt.byteOffset, from, to);
  }

  return {
    columns,
    claim,
    memory: mine,
    assemble() {
      const { values, rows, stiffness, elementValues } = mine();
      const [at, places] = [values.byteOffset, elementValues.byteOffset];
      exports.assemble(at, program.values + 1, rows.byteOffset, stiffness.byteOffset, places, program.elements);
    },
    eliminate({ from, to }) {
      const m = mine();
      return exports.eliminate(
        m.values.byteOffset,
        m.diagonal.byteOffset,
        m.inverse.byteOffset,
        m.steps.byteOffset,
        m.stepAt.byteOffset,
        from,
        to,
        SUSPECT,
        m.shares.byteOffset,
      );
    },
    forward: (steps) => substitute(exports.forward, steps),
    back: (steps) => substitute(exports.back, steps),
    deform() {
      const { rows, x, amounts, elementUnknowns } = mine();
      const unknowns = elementUnknowns.byteOffset;
      exports.deform(rows.byteOffset, x.byteOffset, amounts.byteOffset, columns, unknowns, program.elements);
    },
  };
}

function instantiate(): Shared {
  const binary = Uint8Array.from(atob(KERNEL_BASE64), (character) => character.charCodeAt(0));
  const memory = new WebAssembly.Memory({ initial: 1 });
  const { exports } = new WebAssembly.Instance(new WebAssembly.Module(binary), { env: { memory } });
  return { memory, exports: checkExports(exports), owner: null };
}

function checkExports(found: WebAssembly.Exports): Exports {
  if (!isExports(found)) throw new Error('the kernel lacks a function: build it again');
  return found;
}

function isExports(found: WebAssembly.Exports | Exports): found is Exports {
  return ['assemble', 'eliminate', 'forward', 'back', 'deform'].every((name) => Object.hasOwn(found, name));
}
