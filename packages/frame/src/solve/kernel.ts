/** What a kernel does with a program: the steps of a factorisation on memory of its own. */
import { type Memory, memoryBytes, placeMemory } from './memory.ts';
import type { Program } from './program.ts';
import { assemble, back, deform, eliminate, forward, type Steps } from './reference-kernel.ts';

export interface Kernel {
  /** Load cases side by side in `x` and `amounts`; even. */
  readonly columns: number;
  /** Makes sure that `memory` is this program's; true where what stood in it is lost (all of it is 0). */
  claim(): boolean;
  readonly memory: () => Memory;
  assemble(): void;
  /** Takes steps; returns the first suspect unknown, or -1. */
  eliminate(steps: Steps): number;
  forward(steps: Steps): void;
  back(steps: Steps): void;
  deform(): void;
}

/** The kernel in TypeScript, with a buffer for each program. */
export function referenceKernel(program: Program, columns: number): Kernel {
  const memory = placeMemory(program, columns, new ArrayBuffer(memoryBytes(program, columns)), 0);
  let isNew = true;
  return {
    columns,
    claim() {
      const wasNew = isNew;
      isNew = false;
      return wasNew;
    },
    memory: () => memory,
    assemble: () => assemble(program, memory),
    eliminate: (steps) => eliminate(memory, steps),
    forward: (steps) => forward(memory, steps, columns),
    back: (steps) => back(memory, steps, columns),
    deform: () => deform(program, memory, columns),
  };
}
