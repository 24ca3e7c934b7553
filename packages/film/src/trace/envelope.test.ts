import fc from 'fast-check';
import { expect, test } from 'vitest';
import { envelope, factor, solved } from './envelope.ts';

test('a banded system with a dense last row: the solution gives the right-hand side back', () => {
  fc.assert(
    fc.property(fc.integer({ min: 4, max: 24 }), fc.integer({ min: 1, max: 4 }), fc.integer(), (n, band, seed) => {
      const draw = (i: number, j: number) => Math.sin(seed * 0.001 + 7 * i + 13 * j);
      const shape = envelope(Int32Array.from({ length: n }, (_, i) => (i === n - 1 ? 0 : Math.max(0, i - band))));
      const a = new Float64Array(shape.size);
      for (let i = 0; i < n; i++) {
        // a dominant diagonal makes it positive definite
        for (let j = shape.first[i]!; j <= i; j++) a[shape.start[i]! + j] = i === j ? 2 * n : draw(i, j);
      }
      const at = (i: number, j: number): number => {
        const [r, c] = i >= j ? [i, j] : [j, i];
        return c < shape.first[r]! ? 0 : a[shape.start[r]! + c]!;
      };
      const x = Float64Array.from({ length: n }, (_, i) => draw(i, 99));
      const b = Float64Array.from({ length: n }, (_, i) => x.reduce((s, v, j) => s + at(i, j) * v, 0));
      const l = factor(shape, a);
      expect(l).not.toBeNull();
      const found = solved(shape, l!, b);
      // a direct solver of a well-conditioned system: rounding only
      for (let i = 0; i < n; i++) expect(found[i]).toBeCloseTo(x[i]!, 10);
    }),
  );
});

test('a matrix that is not positive definite is said to be so', () => {
  const shape = envelope(Int32Array.from([0, 0]));
  expect(factor(shape, Float64Array.from([1, 2, 1]))).toBeNull();
});
