/**
 * A guess at the worst middle margin without solving: pins as cantilevers between bone and column, the column in plain
 * bending, each load shared evenly. It orders like with like (same IM pin, same column); it is shown to nobody.
 */
import type { FrameFacts } from '../checks/index.ts';
import type { Demand } from '../loads/demand.ts';
import type { RodFigures } from '../model/figures.ts';

export function estimateMargin({ figures, layout }: FrameFacts): number {
  const { axialN, bendingNmm, torsionNmm } = figures.demand;
  const column = figures.columns[0]!;
  const lever = mean(layout.pins.map(({ entries }) => Math.abs(entries[0]!.surfaceMm))) + column.diameterMm / 2;
  const free = mean(layout.pins.map(({ entries, nearOuterMm }) => Math.abs(entries[0]!.surfaceMm) - nearOuterMm));
  const perFragment = (['proximal', 'distal'] as const).map((name) => {
    const indices = layout.pins.filter(({ fragment }) => fragment === name).map(({ index }) => index);
    const places = indices.map((index) => layout.pins[index]!.crossing[0]);
    const bears = indices.reduce((sum, index) => sum + momentBorne(figures.pins[index]!, figures.demand), 0);
    const spanMm = Math.max(...places) - Math.min(...places);
    const across = (bears * spanMm) / (free * bendingNmm);
    return Math.min(bears / (axialN * free), across, bears / torsionNmm);
  });
  const columnBears = momentBorne(column, figures.demand);
  return Math.min(...perFragment, columnBears / (axialN * lever), columnBears / bendingNmm);
}

/** What a rod or tube bears once and again and again, N·mm. */
function momentBorne({ diameterMm, boreMm, yieldMPa, fatigueMPa }: RodFigures, { repeatedShare }: Demand): number {
  const stressMPa = Math.min(yieldMPa, fatigueMPa / repeatedShare);
  return (stressMPa * Math.PI * (diameterMm ** 4 - boreMm ** 4)) / (32 * diameterMm);
}

const mean = (list: readonly number[]): number => list.reduce((sum, x) => sum + x, 0) / list.length;
