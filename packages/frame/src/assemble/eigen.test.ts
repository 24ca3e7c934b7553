import fc from 'fast-check';
import { expect, test } from 'vitest';
import { symmetricEigen } from './eigen.ts';

test('matrix times vector is value times vector, for random symmetric matrices (1e-12 of the largest)', () => {
  const entry = fc.integer({ min: -1000, max: 1000 });
  fc.assert(
    fc.property(fc.array(entry, { minLength: 36, maxLength: 36 }), (numbers) => {
      const a = (i: number, j: number) => numbers[Math.min(i, j) * 6 + Math.max(i, j)]!;
      const matrix = Float64Array.from({ length: 36 }, (_, at) => a(Math.floor(at / 6), at % 6));
      const { values, vectors } = symmetricEigen(matrix, 6);
      const size = Math.max(...matrix.map(Math.abs), 1);
      for (let c = 0; c < 6; c++) {
        for (let i = 0; i < 6; i++) {
          let sum = 0;
          for (let j = 0; j < 6; j++) sum += a(i, j) * vectors[j * 6 + c]!;
          expect(Math.abs(sum - values[c]! * vectors[i * 6 + c]!)).toBeLessThan(1e-12 * size);
        }
      }
    }),
  );
});

test('a known one: eigenvalues of the chain 2 -1 are 2 - 2 cos(k pi / 4)', () => {
  const { values } = symmetricEigen([2, -1, 0, -1, 2, -1, 0, -1, 2], 3);
  [1, 2, 3].forEach((k, i) => {
    expect(values[i]).toBeCloseTo(2 - 2 * Math.cos((k * Math.PI) / 4), 12);
  });
});
