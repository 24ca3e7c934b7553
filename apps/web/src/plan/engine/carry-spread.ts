/**
 * A quick plan knows middle values only. Until the full run is in, its margins borrow the spread of the last full run,
 * taken as a ratio to the middle; the screen says so.
 */
import type { LoadName, Plan } from '@bonewright/construct';

export function carrySpread(quick: Plan, full: Plan): Plan {
  const at = (load: LoadName) => withSpread(quick, full, load);
  const loads = {
    'axial-ball': at('axial-ball'),
    'axial-guided': at('axial-guided'),
    'bending-in-plane': at('bending-in-plane'),
    'bending-out-of-plane': at('bending-out-of-plane'),
    torsion: at('torsion'),
  };
  return { ...quick, loads, sensitivity: full.sensitivity };
}

function withSpread(quick: Plan, full: Plan, load: LoadName): Plan['loads'][LoadName] {
  const figures = quick.loads[load];
  const spread = full.loads[load].margin;
  const { p50, weakest } = figures.margin;
  if (spread.p50 <= 0) return figures;
  const scale = p50 / spread.p50;
  return { ...figures, margin: { p05: spread.p05 * scale, p50, p95: spread.p95 * scale, weakest } };
}
