/** From a dose a kilogram to the mark on a syringe: amount, volume, dilution recipe, and what rounding to the mark does. */
import { value } from '@bonewright/evidence';
import { type AmountUnit, amountUnit, dosePerKg, strengthPerMl } from './amount.ts';
import type { DoseLine } from './dose-line.ts';

export interface Recipe {
  readonly drugMl: number;
  readonly diluentMl: number;
  readonly totalMl: number;
  /** What the mixture holds, mg or U a ml. */
  readonly perMl: number;
}

export interface Worked {
  readonly unit: AmountUnit;
  /** mg/kg or U/kg, as asked. */
  readonly perKg: number;
  /** What the dose asks for, mg or U. */
  readonly amount: number;
  /** Of what goes into the syringe, mg or U a ml. */
  readonly perMl: number;
  /** Unrounded. */
  readonly exactMl: number;
  /** At the nearest mark of the syringe; 0 where that is less than half a mark. */
  readonly drawnMl: number;
  readonly drawnAmount: number;
  readonly drawnPerKg: number;
  /** What rounding to the mark does to the dose. */
  readonly changePercent: number;
  readonly recipe: Recipe | null;
  /** The hub of a separate needle as a share of the volume drawn; null where nothing is drawn. */
  readonly deadSpacePercent: number | null;
}

const GRAMS_A_KILOGRAM = 1000;
const ABOUT = 1e-9;

/** Works one line out. Throws InputError where its units do not fit each other or its drug. */
export function workOut(line: DoseLine): Worked {
  const unit = amountUnit(line);
  const perKg = dosePerKg(line.dose);
  const kg = line.massG / GRAMS_A_KILOGRAM;
  const amount = perKg * kg;
  const perMl = strengthPerMl(line.strength) / (line.dilution?.parts ?? 1);
  const exactMl = amount / perMl;
  const { markMl } = line.syringe;
  const drawnMl = toMark(exactMl, markMl);
  const drawnAmount = drawnMl * perMl;
  return {
    unit,
    perKg,
    amount,
    perMl,
    exactMl,
    drawnMl,
    drawnAmount,
    drawnPerKg: drawnAmount / kg,
    changePercent: (drawnAmount / amount - 1) * 100,
    recipe: line.dilution ? recipeOf(perMl, exactMl, line.dilution.parts) : null,
    deadSpacePercent: drawnMl > 0 ? (value('dose.dead-space') / drawnMl) * 100 : null,
  };
}

/** The nearest mark, free of the dust of binary fractions. */
function toMark(ml: number, markMl: number): number {
  return Number((Math.round(ml / markMl + ABOUT) * markMl).toFixed(6));
}

/** Enough of the mixture for the dose, from a share of drug that a syringe can measure. */
function recipeOf(perMl: number, neededMl: number, parts: number): Recipe {
  const step = value('dose.handy-volume');
  const steps = Math.max(1, Math.ceil(neededMl / parts / step - ABOUT));
  const drugMl = Number((steps * step).toFixed(6));
  const totalMl = Number((drugMl * parts).toFixed(6));
  return { drugMl, diluentMl: Number((totalMl - drugMl).toFixed(6)), totalMl, perMl };
}

/** Parts that bring the volume to one a syringe measures well; null where it needs no dilution. A help with arithmetic, not a choice of dose. */
export function partsThatHelp(exactMl: number): number | null {
  if (exactMl >= value('dose.least-volume')) return null;
  return EASY_PARTS.find((parts) => exactMl * parts >= value('dose.handy-volume') * (1 - ABOUT)) ?? null;
}

/** Parts that a nurse can mix from whole marks. */
const EASY_PARTS = [2, 4, 5, 10, 20, 50, 100] as const;
