/**
 * The factorisation of src/solve/reference-kernel.ts in AssemblyScript: the same operations on each number in the same
 * order (so the same bits), two numbers at a time. All arguments are byte addresses and counts; it keeps no state.
 * Build: node packages/frame/kernel/build.mjs
 */

/** Numbers and whole numbers at an index from an address. */
// @ts-expect-error: a decorator of AssemblyScript
@inline
function f(at: usize, index: usize): f64 {
  return load<f64>(at + (index << 3));
}

// @ts-expect-error: a decorator of AssemblyScript
@inline
function n(at: usize, index: usize): usize {
  return load<u32>(at + (index << 2));
}

// @ts-expect-error: a decorator of AssemblyScript
@inline
function two(at: usize, index: usize): v128 {
  return v128.load(at + (index << 3));
}

const STEP_HEAD: usize = 6;
const BLOCK_HEAD: usize = 4;
const RUN: usize = 3;

/** Adds every element's stiffness. `count` is the length of `values`. */
export function assemble(values: usize, count: usize, rows: usize, stiffness: usize, places: usize, elements: usize): void {
  memory.fill(values, 0, count << 3);
  for (let element: usize = 0; element < elements; element++) {
    for (let i: usize = 0; i < 12; i++) {
      const t0 = f64x2.splat(f(stiffness, 0) * f(rows, i));
      const t1 = f64x2.splat(f(stiffness, 1) * f(rows, 12 + i));
      const t2 = f64x2.splat(f(stiffness, 2) * f(rows, 24 + i));
      const t3 = f64x2.splat(f(stiffness, 3) * f(rows, 36 + i));
      const t4 = f64x2.splat(f(stiffness, 4) * f(rows, 48 + i));
      const t5 = f64x2.splat(f(stiffness, 5) * f(rows, 60 + i));
      for (let j: usize = i & ~1; j < 12; j += 2) {
        let sum = f64x2.mul(t0, two(rows, j));
        sum = f64x2.add(sum, f64x2.mul(t1, two(rows, 12 + j)));
        sum = f64x2.add(sum, f64x2.mul(t2, two(rows, 24 + j)));
        sum = f64x2.add(sum, f64x2.mul(t3, two(rows, 36 + j)));
        sum = f64x2.add(sum, f64x2.mul(t4, two(rows, 48 + j)));
        sum = f64x2.add(sum, f64x2.mul(t5, two(rows, 60 + j)));
        if (j >= i) {
          const at = values + (n(places, 0) << 3);
          store<f64>(at, load<f64>(at) + f64x2.extract_lane(sum, 0));
          places += 4;
        }
        const at = values + (n(places, 0) << 3);
        store<f64>(at, load<f64>(at) + f64x2.extract_lane(sum, 1));
        places += 4;
      }
    }
    rows += 72 << 3;
    stiffness += 6 << 3;
  }
}

/** Takes the elimination steps from `from` up to `to`; returns the first suspect unknown, or -1. */
export function eliminate(
  values: usize,
  diagonal: usize,
  inverse: usize,
  steps: usize,
  stepAt: usize,
  from: usize,
  to: usize,
  suspect: f64,
  shares: usize,
): i32 {
  for (let step = from; step < to; step++) {
    const at = steps + (n(stepAt, step) << 2);
    const size = n(at, 0);
    const panel = values + (n(at, 1) << 3);
    const width = n(at, 2);
    const first = n(at, 3);
    for (let k: usize = 0; k < size; k++) {
      const row = panel + ((k * width) << 3);
      const pivot = f(row, k);
      if (!(pivot > suspect * f(diagonal, first + k))) return <i32>(first + k);
      const share = 1 / pivot;
      store<f64>(inverse + ((first + k) << 3), share);
      for (let i = k + 1; i < size; i++) {
        subtract1(panel + ((i * width + i) << 3), row + (i << 3), width - i, f(row, i) * share);
      }
    }
    passOn(values, panel, inverse + (first << 3), size, width, at, shares);
  }
  return -1;
}

/** Takes a panel's part from the rows of the groups it is tied to. */
function passOn(values: usize, panel: usize, inverse: usize, size: usize, width: usize, at: usize, shares: usize): void {
  let block = at + ((STEP_HEAD + n(at, 4)) << 2);
  const stride = width << 3;
  for (let left = n(at, 5); left > 0; left--) {
    const rows = n(block, 0);
    const column = panel + (n(block, 1) << 3);
    const targetStride = n(block, 2);
    const runs = n(block, 3);
    block += BLOCK_HEAD << 2;
    const step = (rows + 1) & ~1;
    for (let k: usize = 0; k < size; k++) {
      const share = v128.load64_splat(inverse + (k << 3));
      for (let i: usize = 0; i < rows; i += 2) {
        v128.store(shares + ((k * step + i) << 3), f64x2.mul(share, two(column + k * stride, i)));
      }
    }
    for (let i: usize = 0; i < rows; i++) {
      for (let run: usize = 0; run < runs; run++) {
        const entry = block + ((run * RUN) << 2);
        const skip = run == 0 ? i : 0;
        const source = panel + ((n(entry, 0) + skip) << 3);
        const target = values + ((n(entry, 2) + i * targetStride + skip) << 3);
        subtractRows(target, source, stride, n(entry, 1) - skip, size, shares + (i << 3), step << 3);
      }
    }
    block += (runs * RUN) << 2;
  }
}

/** target -= share 0 times source row 0, then share 1 times row 1, ...; shares are `step` bytes apart. */
function subtractRows(
  target: usize,
  source: usize,
  stride: usize,
  length: usize,
  size: usize,
  shares: usize,
  step: usize,
): void {
  let k: usize = 0;
  for (; k + 6 <= size; k += 6) subtract6(target, source + k * stride, stride, length, shares + k * step, step);
  for (; k + 3 <= size; k += 3) subtract3(target, source + k * stride, stride, length, shares + k * step, step);
  for (; k < size; k++) subtract1(target, source + k * stride, length, load<f64>(shares + k * step));
}

// @ts-expect-error: a decorator of AssemblyScript
@inline
function subtract6(target: usize, source: usize, stride: usize, length: usize, shares: usize, step: usize): void {
  const source1 = source + stride;
  const source2 = source1 + stride;
  const source3 = source2 + stride;
  const source4 = source3 + stride;
  const source5 = source4 + stride;
  const a = v128.load64_splat(shares);
  const b = v128.load64_splat(shares + step);
  const c = v128.load64_splat(shares + 2 * step);
  const d = v128.load64_splat(shares + 3 * step);
  const e = v128.load64_splat(shares + 4 * step);
  const g = v128.load64_splat(shares + 5 * step);
  let j: usize = 0;
  for (; j + 2 <= length; j += 2) {
    let value = two(target, j);
    value = f64x2.sub(value, f64x2.mul(a, two(source, j)));
    value = f64x2.sub(value, f64x2.mul(b, two(source1, j)));
    value = f64x2.sub(value, f64x2.mul(c, two(source2, j)));
    value = f64x2.sub(value, f64x2.mul(d, two(source3, j)));
    value = f64x2.sub(value, f64x2.mul(e, two(source4, j)));
    value = f64x2.sub(value, f64x2.mul(g, two(source5, j)));
    v128.store(target + (j << 3), value);
  }
  if (j < length) {
    let value = f(target, j) - f64x2.extract_lane(a, 0) * f(source, j);
    value -= f64x2.extract_lane(b, 0) * f(source1, j);
    value -= f64x2.extract_lane(c, 0) * f(source2, j);
    value -= f64x2.extract_lane(d, 0) * f(source3, j);
    value -= f64x2.extract_lane(e, 0) * f(source4, j);
    value -= f64x2.extract_lane(g, 0) * f(source5, j);
    store<f64>(target + (j << 3), value);
  }
}

// @ts-expect-error: a decorator of AssemblyScript
@inline
function subtract3(target: usize, source: usize, stride: usize, length: usize, shares: usize, step: usize): void {
  const source1 = source + stride;
  const source2 = source1 + stride;
  const a = v128.load64_splat(shares);
  const b = v128.load64_splat(shares + step);
  const c = v128.load64_splat(shares + 2 * step);
  let j: usize = 0;
  for (; j + 2 <= length; j += 2) {
    let value = two(target, j);
    value = f64x2.sub(value, f64x2.mul(a, two(source, j)));
    value = f64x2.sub(value, f64x2.mul(b, two(source1, j)));
    value = f64x2.sub(value, f64x2.mul(c, two(source2, j)));
    v128.store(target + (j << 3), value);
  }
  if (j < length) {
    let value = f(target, j) - f64x2.extract_lane(a, 0) * f(source, j);
    value -= f64x2.extract_lane(b, 0) * f(source1, j);
    value -= f64x2.extract_lane(c, 0) * f(source2, j);
    store<f64>(target + (j << 3), value);
  }
}

// @ts-expect-error: a decorator of AssemblyScript
@inline
function subtract1(target: usize, source: usize, length: usize, share: f64): void {
  const both = f64x2.splat(share);
  let j: usize = 0;
  for (; j + 2 <= length; j += 2) {
    v128.store(target + (j << 3), f64x2.sub(two(target, j), f64x2.mul(both, two(source, j))));
  }
  if (j < length) store<f64>(target + (j << 3), f(target, j) - share * f(source, j));
}

/** Takes the loads on the interior through to the interface, every column at once; `columns` is even. */
export function forward(
  values: usize,
  inverse: usize,
  x: usize,
  columns: usize,
  steps: usize,
  stepAt: usize,
  from: usize,
  to: usize,
): void {
  for (let step = from; step < to; step++) {
    const at = steps + (n(stepAt, step) << 2);
    const size = n(at, 0);
    const width = n(at, 2);
    const first = n(at, 3);
    for (let k: usize = 0; k < size; k++) {
      const row = values + ((n(at, 1) + k * width) << 3);
      const source = x + (((first + k) * columns) << 3);
      for (let j = k + 1; j < width; j++) {
        const unknown = j < size ? first + j : n(at, STEP_HEAD + j - size);
        subtract1(x + ((unknown * columns) << 3), source, columns, f(row, j) * f(inverse, first + k));
      }
    }
  }
}

/** From the interface's motions to the interior's, every column at once; `columns` is even. */
export function back(
  values: usize,
  inverse: usize,
  x: usize,
  columns: usize,
  steps: usize,
  stepAt: usize,
  from: usize,
  to: usize,
): void {
  for (let step = to; step > from; step--) {
    const at = steps + (n(stepAt, step - 1) << 2);
    const size = n(at, 0);
    const width = n(at, 2);
    const first = n(at, 3);
    for (let k = size; k > 0; k--) {
      const row = values + ((n(at, 1) + (k - 1) * width) << 3);
      const target = x + (((first + k - 1) * columns) << 3);
      const share = f64x2.splat(f(inverse, first + k - 1));
      let c: usize = 0;
      for (; c + 6 <= columns; c += 6) {
        let sum0 = two(target, c);
        let sum1 = two(target, c + 2);
        let sum2 = two(target, c + 4);
        for (let j = k; j < width; j++) {
          const unknown = j < size ? first + j : n(at, STEP_HEAD + j - size);
          const source = x + ((unknown * columns + c) << 3);
          const value = v128.load64_splat(row + (j << 3));
          sum0 = f64x2.sub(sum0, f64x2.mul(value, two(source, 0)));
          sum1 = f64x2.sub(sum1, f64x2.mul(value, two(source, 2)));
          sum2 = f64x2.sub(sum2, f64x2.mul(value, two(source, 4)));
        }
        v128.store(target + (c << 3), f64x2.mul(sum0, share));
        v128.store(target + ((c + 2) << 3), f64x2.mul(sum1, share));
        v128.store(target + ((c + 4) << 3), f64x2.mul(sum2, share));
      }
      for (; c < columns; c += 2) {
        let sum = two(target, c);
        for (let j = k; j < width; j++) {
          const unknown = j < size ? first + j : n(at, STEP_HEAD + j - size);
          sum = f64x2.sub(sum, f64x2.mul(v128.load64_splat(row + (j << 3)), two(x + ((unknown * columns) << 3), c)));
        }
        v128.store(target + (c << 3), f64x2.mul(sum, share));
      }
    }
  }
}

/** Deformations of every element from the motions; `columns` is even. */
export function deform(rows: usize, x: usize, amounts: usize, columns: usize, unknowns: usize, elements: usize): void {
  const zero = f64x2.splat(0);
  for (let element: usize = 0; element < elements; element++) {
    for (let mode: usize = 0; mode < 6; mode++) {
      let c: usize = 0;
      for (; c + 6 <= columns; c += 6) {
        let sum0 = zero;
        let sum1 = zero;
        let sum2 = zero;
        for (let k: usize = 0; k < 12; k++) {
          const value = v128.load64_splat(rows + (k << 3));
          const from = x + ((n(unknowns, k) * columns + c) << 3);
          sum0 = f64x2.add(sum0, f64x2.mul(value, two(from, 0)));
          sum1 = f64x2.add(sum1, f64x2.mul(value, two(from, 2)));
          sum2 = f64x2.add(sum2, f64x2.mul(value, two(from, 4)));
        }
        v128.store(amounts + (c << 3), sum0);
        v128.store(amounts + ((c + 2) << 3), sum1);
        v128.store(amounts + ((c + 4) << 3), sum2);
      }
      for (; c < columns; c += 2) {
        let sum = zero;
        for (let k: usize = 0; k < 12; k++) {
          sum = f64x2.add(sum, f64x2.mul(v128.load64_splat(rows + (k << 3)), two(x + ((n(unknowns, k) * columns) << 3), c)));
        }
        v128.store(amounts + (c << 3), sum);
      }
      rows += 12 << 3;
      amounts += columns << 3;
    }
    unknowns += 12 << 2;
  }
}
