/**
 * Numbers held as an unevaluated sum of two (about 32 digits), for what cancels: a nearly rigid member turns its
 * motions' 17th digit into a force. Sums and products by Knuth and Dekker; the dot product is Ogita, Rump and Oishi 2005.
 */
import type { Vec3 } from '../model/frame-model.ts';

/** A value as hi + lo. */
export type Twofold = readonly [hi: number, lo: number];
export type Twofold3 = readonly [Twofold, Twofold, Twofold];

const SPLITTER = 2 ** 27 + 1;

/** a + b without error. */
export function addExactly(a: number, b: number): Twofold {
  const sum = a + b;
  const part = sum - a;
  return [sum, a - (sum - part) + (b - part)];
}

/** a * b without error (while it does not overflow). */
export function multiplyExactly(a: number, b: number): Twofold {
  const product = a * b;
  const [ah, bh] = [upperHalf(a), upperHalf(b)];
  const [al, bl] = [a - ah, b - bh];
  return [product, al * bl - (product - ah * bh - al * bh - ah * bl)];
}

function upperHalf(a: number): number {
  const spread = SPLITTER * a;
  return spread - (spread - a);
}

/** Sum of products of twofold numbers. */
export function dot(a: readonly Twofold[], b: readonly Twofold[]): Twofold {
  let [sum, rest] = [0, 0];
  a.forEach(([ah, al], i) => {
    const [bh, bl] = b[i] ?? [0, 0];
    const [product, error] = multiplyExactly(ah, bh);
    const [next, lost] = addExactly(sum, product);
    sum = next;
    rest += lost + error + ah * bl + al * bh;
  });
  return addExactly(sum, rest);
}

export const twofold = (a: number): Twofold => [a, 0];
export const negate = ([hi, lo]: Twofold): Twofold => [-hi, -lo];

export function add(a: Twofold, b: Twofold): Twofold {
  const [sum, lost] = addExactly(a[0], b[0]);
  return addExactly(sum, lost + a[1] + b[1]);
}

/** a / b for a plain b. */
export function divide(a: Twofold, b: number): Twofold {
  const hi = a[0] / b;
  const [product, error] = multiplyExactly(hi, b);
  return addExactly(hi, (a[0] - product - error + a[1]) / b);
}

export function cross(a: Twofold3, b: Twofold3): Twofold3 {
  const part = (i: 0 | 1 | 2, j: 0 | 1 | 2): Twofold => dot([a[i], negate(a[j])], [b[j], b[i]]);
  return [part(1, 2), part(2, 0), part(0, 1)];
}

/** b - a of two places. */
export function between(a: Vec3, b: Vec3): Twofold3 {
  return [addExactly(b[0], -a[0]), addExactly(b[1], -a[1]), addExactly(b[2], -a[2])];
}
