/** The WebAssembly kernel against the TypeScript reference: the same bits, and built from the source that is here. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CompiledFrame } from '../model/compiled-frame.ts';
import type { FrameModel } from '../model/frame-model.ts';
import { arbitraryFrame } from '../verify/arbitrary-frame.ts';
import { compileFrame } from './compile-frame.ts';
import { solveFrame } from './solve-frame.ts';

const RUNS = { numRuns: 60 };

function solved(model: FrameModel, kernel: 'wasm' | 'typescript'): CompiledFrame {
  const frame = compileFrame(model, { kernel });
  frame.solve();
  return frame;
}

test('the generated module is what the build makes of the source', async () => {
  const build: { buildKernel(): Promise<string> } = await import(
    new URL('../../kernel/build.mjs', import.meta.url).href
  );
  const generated = readFileSync(new URL('kernel.generated.ts', import.meta.url), 'utf8');
  expect(await build.buildKernel()).toBe(generated);
});

describe('random frames with contacts and sleeves', () => {
  test('both kernels give the same bits', () => {
    fc.assert(
      fc.property(arbitraryFrame({ gaps: true }), (model) => {
        const [fast, plain] = [solved(model, 'wasm'), solved(model, 'typescript')];
        for (const [name, values] of Object.entries(fast.outputs)) {
          expect({ name, values }).toEqual({ name, values: Reflect.get(plain.outputs, name) });
        }
      }),
      RUNS,
    );
  });

  test('the compiled frame gives what the exact solution gives, within 1e-8 of the largest', () => {
    fc.assert(
      fc.property(arbitraryFrame({ gaps: true }), (model) => {
        const frame = solved(model, 'wasm');
        const exact = solveFrame(model).loads;
        frame.loads.forEach((load, i) => {
          const wanted = frame.members.flatMap((m) => [...(exact[load]?.members[m]?.from ?? [])]);
          const found = frame.members.flatMap((_, m) => {
            const at = (i * frame.members.length + m) * 12;
            return [...frame.outputs.memberEnds.subarray(at, at + 6)];
          });
          const size = Math.max(...wanted.map(Math.abs));
          const worst = Math.max(...wanted.map((value, k) => Math.abs(value - (found[k] ?? Number.NaN))));
          expect(worst).toBeLessThanOrEqual(1e-8 * size);
        });
      }),
      RUNS,
    );
  });

  test('rewritten inputs give what a fresh compile gives, bit for bit', () => {
    fc.assert(
      fc.property(arbitraryFrame({ gaps: true }), fc.double({ min: 0.5, max: 2, noNaN: true }), (model, factor) => {
        const changed = { ...model, materials: { ...model.materials, steel: { E: 193000 * factor, nu: 0.3 } } };
        const [frame, fresh] = [solved(model, 'wasm'), compileFrame(changed)];
        for (const key of ['youngMPa', 'shearModulusMPa'] as const) frame.inputs[key].set(fresh.inputs[key]);
        frame.solve();
        fresh.solve();
        expect(frame.outputs).toEqual(fresh.outputs);
      }),
      RUNS,
    );
  });
});
