/**
 * The pair of outer edges of a bone from block to block: of all chains of (left edge, right edge) the one whose edges are
 * strong on both sides, with no second bone's edge between them, near the clicked line, and smooth. Dynamic programme.
 */

export interface Chain {
  readonly centre: readonly number[];
  readonly halfWidth: readonly number[];
  /** Mean score of its blocks: 1 where both edges are as strong as the strongest pairs. */
  readonly strength: number;
}

const SMALLEST_HALF_WIDTH_PX = 3;
/** Farthest that the bone's middle may lie from the clicked line, in half-widths: a click's error and the bone's bow. */
export const FARTHEST_CENTRE = 0.8;
/** Weight of that distance, and of an edge inside the pair that no annulus has. */
const PENALTY = { centre: 0.4, foreign: 0.4, move: 0.02 };
/** Foreign edges below this share of a strong one are noise. */
const FOREIGN_FROM = 0.3;
const FARTHEST_MOVE = 2;
const NEVER = -1e9;

/** Edges of one block on the grid: rises and falls. */
interface Edges {
  readonly rise: Float64Array;
  readonly fall: Float64Array;
}

/** Grid of edge positions and what is known of each pair before any block is seen. */
interface Grid {
  readonly count: number;
  readonly step: number;
  readonly reach: number;
  readonly allowed: Uint8Array;
  readonly prior: Float64Array;
}

/**
 * `slopes`: rise of each block's profile at x = -reach ... reach; pairs up to `widest` half-width.
 * `others`: chains found before, which this one must not repeat.
 */
export function bestChain(
  slopes: readonly Float64Array[],
  reach: number,
  widest: number,
  others: readonly Chain[] = [],
): Chain | null {
  const grid = gridOf(reach, widest);
  const blocks = slopes.map((s) => edgesOf(s, grid));
  const cap = strongPair(blocks, grid);
  if (!(cap > 0)) return null;
  const best: Float64Array[] = [];
  const from: Int8Array[] = [];
  for (const [k, block] of blocks.entries()) {
    const own = scores(block, grid, cap);
    for (const chain of others) exclude(own, grid, chain.centre[k]!, chain.halfWidth[k]!);
    const { now, came } = advanced(best[best.length - 1], own, grid);
    best.push(now);
    from.push(came);
  }
  return tracedBack(best, from, grid);
}

function gridOf(reach: number, widest: number): Grid {
  const step = Math.max(1, Math.round(widest / 60));
  const count = Math.floor((2 * reach) / step) + 1;
  const allowed = new Uint8Array(count * count);
  const prior = new Float64Array(count * count);
  for (let l = 0; l < count; l++) {
    for (let r = l + 1; r < count; r++) {
      const a = ((r - l) * step) / 2;
      const c = Math.abs((r + l) * step - 2 * reach) / 2;
      if (a < SMALLEST_HALF_WIDTH_PX || a > widest || c > FARTHEST_CENTRE * a) continue;
      allowed[l * count + r] = 1;
      prior[l * count + r] = PENALTY.centre * (c / (FARTHEST_CENTRE * a)) ** 2;
    }
  }
  return { count, step, reach, allowed, prior };
}

function edgesOf(slope: Float64Array, { count, step }: Grid): Edges {
  const rise = new Float64Array(count);
  const fall = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    for (let q = -(step >> 1); q <= step >> 1; q++) {
      const v = slope[i * step + q] ?? 0;
      rise[i] = Math.max(rise[i]!, v);
      fall[i] = Math.max(fall[i]!, -v);
    }
  }
  return { rise, fall };
}

/** The weaker edge of each block's strongest pair, median of the blocks: what is stronger (metal) counts as this. */
function strongPair(blocks: readonly Edges[], { count, allowed }: Grid): number {
  const strongest = blocks.map(({ rise, fall }) => {
    let top = 0;
    for (let l = 0; l < count; l++) {
      for (let r = l + 1; r < count; r++) if (allowed[l * count + r]) top = Math.max(top, Math.min(rise[l]!, fall[r]!));
    }
    return top;
  });
  strongest.sort((a, b) => a - b);
  return strongest[strongest.length >> 1] ?? 0;
}

function scores({ rise, fall }: Edges, { count, allowed, prior }: Grid, cap: number): Float64Array {
  const up = rise.map((v) => Math.min(1, v / cap));
  const down = fall.map((v) => Math.min(1, v / cap));
  const out = new Float64Array(count * count).fill(NEVER);
  for (let l = 0; l < count; l++) {
    for (let r = l + 1; r < count; r++) {
      const at = l * count + r;
      if (!allowed[at]) continue;
      const own = 0.8 * Math.min(up[l]!, down[r]!) + 0.1 * (up[l]! + down[r]!) - prior[at]!;
      out[at] = own - (own > 0.2 ? PENALTY.foreign * foreign(up, down, l, r) : 0);
    }
  }
  return out;
}

/** Takes out the pairs that lie near a known one, both edges together. */
function exclude(own: Float64Array, { count, step, reach }: Grid, centre: number, halfWidth: number): void {
  const near = OTHER_WIDTHS * 2 * halfWidth;
  for (let l = 0; l < count; l++) {
    for (let r = l + 1; r < count; r++) {
      const left = l * step - reach - (centre - halfWidth);
      const right = r * step - reach - (centre + halfWidth);
      if (Math.max(Math.abs(left), Math.abs(right)) < near) own[l * count + r] = NEVER;
    }
  }
}
/** Another chain differs from the first by at least this share of its width, at one edge or both. */
const OTHER_WIDTHS = 0.2;

/** The strongest rise in the left half or fall in the right half of a pair: the edge of another bone. */
function foreign(up: Float64Array, down: Float64Array, l: number, r: number): number {
  const rim = Math.max(2, Math.ceil(0.09 * (r - l)));
  const middle = (l + r) / 2;
  let most = 0;
  for (let i = l + rim; i < middle; i++) most = Math.max(most, up[i]!);
  for (let i = r - rim; i > middle; i--) most = Math.max(most, down[i]!);
  return Math.max(0, most - FOREIGN_FROM) / (1 - FOREIGN_FROM);
}

/** Best sums up to this block, and from where each came. */
function advanced(
  last: Float64Array | undefined,
  own: Float64Array,
  { count, allowed }: Grid,
): { now: Float64Array; came: Int8Array } {
  const came = new Int8Array(count * count);
  if (!last) return { now: own, came };
  const now = new Float64Array(count * count).fill(NEVER);
  const side = 2 * FARTHEST_MOVE + 1;
  for (let l = 0; l < count; l++) {
    for (let r = l + 1; r < count; r++) {
      const at = l * count + r;
      if (!allowed[at]) continue;
      let top = NEVER;
      for (let dl = -FARTHEST_MOVE; dl <= FARTHEST_MOVE; dl++) {
        for (let dr = -FARTHEST_MOVE; dr <= FARTHEST_MOVE; dr++) {
          const ll = l - dl;
          const rr = r - dr;
          if (ll < 0 || rr < 0 || ll >= count || rr >= count || !allowed[ll * count + rr]) continue;
          const v = last[ll * count + rr]! - PENALTY.move * (dl * dl + dr * dr);
          if (v > top) {
            top = v;
            came[at] = (dl + FARTHEST_MOVE) * side + dr + FARTHEST_MOVE;
          }
        }
      }
      now[at] = top + own[at]!;
    }
  }
  return { now, came };
}

function tracedBack(
  best: readonly Float64Array[],
  from: readonly Int8Array[],
  { count, step, reach }: Grid,
): Chain | null {
  const n = best.length;
  const end = best[n - 1]!;
  let at = 0;
  for (let i = 1; i < end.length; i++) if (end[i]! > end[at]!) at = i;
  if (end[at]! < NEVER / 2) return null;
  const strength = end[at]! / n;
  const side = 2 * FARTHEST_MOVE + 1;
  const centre = new Array<number>(n);
  const halfWidth = new Array<number>(n);
  for (let k = n - 1; k >= 0; k--) {
    const l = Math.floor(at / count);
    const r = at % count;
    centre[k] = ((l + r) * step) / 2 - reach;
    halfWidth[k] = ((r - l) * step) / 2;
    const code = from[k]![at]!;
    at = (l - (Math.floor(code / side) - FARTHEST_MOVE)) * count + (r - ((code % side) - FARTHEST_MOVE));
  }
  return { centre, halfWidth, strength };
}
