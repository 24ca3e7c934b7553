/** Elastic stress-raisers of a hole across a tube, K_tg on the gross section. */
import { type Curve, termsOf } from '../curve.ts';

const PETERSON = {
  title: "Peterson's Stress Concentration Factors, tube with a transverse hole (transcribed by an engineering site)",
};
const APPLIES = 'round tube, hole through both walls; elastic: over-predicts the loss of whole bones two- to threefold';

export const holeCurves: readonly Curve[] = [
  {
    id: 'hole.tension',
    name: 'stress-raiser of a hole across a tube in tension',
    appliesTo: APPLIES,
    source: PETERSON,
    status: 'seen',
    terms: termsOf([
      [[0, 3]],
      [
        [0, 0.427],
        [1, -6.77],
        [2, 22.698],
        [3, -16.67],
      ],
      [
        [0, 11.357],
        [1, 15.665],
        [2, -60.929],
        [3, 41.501],
      ],
    ]),
  },
  {
    id: 'hole.bending',
    name: 'stress-raiser of a hole across a tube in bending, hole at the outermost fibre',
    appliesTo: APPLIES,
    source: PETERSON,
    status: 'seen',
    terms: termsOf([
      [[0, 3]],
      [
        [0, -6.25],
        [1, -0.585],
        [2, 3.115],
      ],
      [
        [0, 41],
        [1, -1.071],
        [2, -6.746],
      ],
      [
        [0, -45],
        [1, 1.389],
        [2, 13.889],
      ],
    ]),
  },
  {
    id: 'hole.torsion',
    name: 'stress-raiser of a hole across a tube in torsion, normal stress over nominal shear',
    appliesTo: APPLIES,
    source: PETERSON,
    status: 'seen',
    terms: termsOf([
      [[0, 4]],
      [
        [0, -6.055],
        [1, 3.184],
        [2, -3.461],
      ],
      [
        [0, 32.764],
        [1, -30.121],
        [2, 39.887],
      ],
      [
        [0, -38.33],
        [0.5, 51.542],
        [1, -27.483],
      ],
    ]),
  },
];
