/** Betters one construct on the full model by small moves of its near and far pins, its column and its clearance. */
import { value } from '@bonewright/evidence';
import type { Construct } from '../model/case-file.ts';
import { withColumns, withPinAt } from '../what-if/edits.ts';
import type { Ground } from './candidates.ts';
import { spacingOf } from './layouts.ts';
import { GRID_MM } from './sites.ts';
import type { Solve, Solved } from './solve.ts';
import { worstMargin } from './worth.ts';

/** A change counts where it gains this share: less is not worth another place. */
const GAIN = 1.01;

/** The best construct that the moves reach from `start`; the same kind, never one that a check stops. */
export function refined(ground: Ground, start: Solved, solve: Solve): Solved {
  let best = start;
  const offer = (construct: Construct) => {
    const next = solve(construct);
    if (next && next.worth > best.worth * GAIN) best = next;
  };
  for (const { id } of ground.patientCase.drawer.columns) {
    offer(withColumns(best.construct, (c) => ({ ...c, drawerId: id })));
  }
  if (worstMargin(best.plan) < value('plan.margin.bring-nearer')) {
    offer(withColumns(best.construct, (c) => ({ ...c, clearanceMm: value('rule.skin-clearance.watch') })));
  }
  for (const index of endPins(ground, start.construct)) {
    for (const toMm of places(ground, best.construct, index)) offer(withPinAt(best.construct, index, toMm));
  }
  return best;
}

/** The pins at both ends of each fragment, those near the fracture first. */
function endPins({ patientCase: { fracture } }: Ground, { pins }: Construct): number[] {
  const distal = pins.findIndex(({ sMm }) => sMm > fracture.fromMm);
  return [...new Set([distal - 1, distal, 0, pins.length - 1])];
}

/** The allowed places a step to either side that keep their distance to the neighbours. */
function places({ patientCase, sites }: Ground, construct: Construct, index: number): number[] {
  const { pins, im } = construct;
  const pin = pins[index]!;
  const { allowed } = sites(pin.drawerId, im ?? null);
  const spacing = spacingOf(patientCase, pin.drawerId);
  const steps = Math.round(value('what-if.pin-step') / GRID_MM) * GRID_MM;
  return [...allowed.proximal, ...allowed.distal]
    .filter(({ sMm }) => Math.abs(sMm - pin.sMm) === steps)
    .filter(({ sMm, boneWidthMm }) =>
      [pins[index - 1], pins[index + 1]].every((other) => !other || Math.abs(other.sMm - sMm) >= spacing(boneWidthMm)),
    )
    .map(({ sMm }) => sMm);
}
