/** A sound dose line for tests: a hedgehog weighed this morning. */
import type { DoseLine } from './dose-line.ts';
import type { DoseContext } from './given.ts';

export const doseLine = (change: Partial<DoseLine> = {}): DoseLine => ({
  drug: 'medetomidine',
  use: 'anaesthesia',
  route: 'IM',
  site: '',
  species: 'hedgehog',
  massG: 820,
  weighedAt: '2026-11-25T08:00:00Z',
  dose: { value: 0.1, unit: 'mg/kg' },
  figureId: null,
  strength: { value: 1, unit: 'mg/ml' },
  dilution: null,
  syringe: { capacityMl: 1, markMl: 0.01 },
  ...change,
});

export const doseContext = (change: Partial<DoseContext> = {}): DoseContext => ({
  now: '2026-11-25T21:10:00Z',
  minutesEastOfUtc: 0,
  earlier: [],
  ...change,
});
