/**
 * How many multiply-adds a second this machine does at best, from a WebAssembly loop with independent chains
 * (a = a * m + c), one number at a time or two. WebAssembly has no fused form, so a multiply and an add count as one.
 */

const CHAINS = 12;
const ROUNDS = 2_000_000;
const TRIES = 7;

/** Multiply-adds a second, the best of some tries. */
export function measureMultiplyAdds(lanes: 1 | 2): number {
  const { exports } = new WebAssembly.Instance(new WebAssembly.Module(program(lanes)));
  const { run } = exports;
  if (typeof run !== 'function') throw new Error('the measuring loop was not built');
  const times = Array.from({ length: TRIES }, () => {
    const start = performance.now();
    run(ROUNDS);
    return performance.now() - start;
  });
  return (lanes * CHAINS * ROUNDS) / (Math.min(...times) / 1000);
}

const F64 = 0x7c;
const V128 = 0x7b;
const I32 = 0x7f;
const [LOCAL_GET, LOCAL_SET, F64_CONST, END] = [0x20, 0x21, 0x44, 0x0b] as const;

/** The module's bytes: (func (export "run") (param i32) (result f64)). */
function program(lanes: 1 | 2): Uint8Array<ArrayBuffer> {
  const [type, splat, multiply, add] =
    lanes === 1 ? [F64, [], [0xa2], [0xa0]] : [V128, [0xfd, 0x14], [0xfd, 0xf2, 0x01], [0xfd, 0xf0, 0x01]];
  const first = lanes === 1 ? [] : [0xfd, 0x21, 0x00];
  const constant = (value: number) => [F64_CONST, ...new Uint8Array(Float64Array.of(value).buffer), ...splat];
  // Locals: 0 the count, 1 the factor, 2 the addend, then the chains.
  const chains = Array.from({ length: CHAINS }, (_, i) => i + 3);
  const step = (chain: number) => [LOCAL_GET, chain, LOCAL_GET, 1, ...multiply, LOCAL_GET, 2, ...add, LOCAL_SET, chain];
  const sum = chains.slice(1).flatMap((chain) => [LOCAL_GET, chain, ...add]);
  const body = [
    ...[1, CHAINS + 2, type],
    ...[...constant(0.999999), LOCAL_SET, 1, ...constant(1e-6), LOCAL_SET, 2],
    ...[0x03, 0x40, ...chains.flatMap(step)],
    ...[LOCAL_GET, 0, 0x41, 1, 0x6b, 0x22, 0, 0x0d, 0, END],
    ...[LOCAL_GET, chains[0]!, ...sum, ...first, END],
  ];
  const sections = [
    section(1, [1, 0x60, 1, I32, 1, F64]),
    section(3, [1, 0]),
    section(7, [1, 3, ...new TextEncoder().encode('run'), 0, 0]),
    section(10, [1, ...size(body.length), ...body]),
  ];
  return Uint8Array.from([0x00, 0x61, 0x73, 0x6d, 1, 0, 0, 0, ...sections.flat()]);
}

const section = (id: number, content: readonly number[]): number[] => [id, ...size(content.length), ...content];

/** A whole number in LEB128. */
function size(value: number): number[] {
  return value < 128 ? [value] : [(value & 127) | 128, ...size(value >> 7)];
}
