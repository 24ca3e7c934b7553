/**
 * Every number of a case and construct that may be off, at one value each: the middle ones, or one sample of them.
 * What is built, solved and judged reads its numbers from here and nowhere else.
 */
import { type Profile, profileOf } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import { type Demand, demandOf } from '../loads/demand.ts';
import { classOf } from '../loads/species.ts';
import type { Case, Construct, DrawerColumn, DrawerImPin, DrawerPin } from './case-file.ts';
import { type Material, materialOf, needleSize } from './materials.ts';

export interface RodFigures {
  diameterMm: number;
  /** Inner diameter of tubing, 0 for solid. */
  boreMm: number;
  youngMPa: number;
  poisson: number;
  yieldMPa: number;
  /** Stress borne for the whole time to union, once a step. */
  fatigueMPa: number;
}

export interface PinFigures extends RodFigures {
  /** Diameter inside the bone: the core of a threaded pin. */
  coreMm: number;
  threaded: boolean;
  /** How much longer its free length is than planned. */
  freeByMm: number;
}

export interface ImFigures extends RodFigures {
  /** The bent end of a tie-in is as soft as annealed wire. */
  bentYieldMPa: number;
  bentFatigueMPa: number;
}

export interface ColumnFigures extends RodFigures {
  side: 'near' | 'far';
  clearanceMm: number;
  /** Moulded round its pins, so that each pin takes away from its section. */
  moulded: boolean;
}

export interface Figures {
  profile: Profile;
  gapMm: number;
  boneYoungMPa: number;
  boneYieldStrain: number;
  /** The measured weakening of a hole beyond 1, times this. */
  holeShare: number;
  /** How many times softer than bonded, less 1. 0: bonded. */
  slack: number;
  bondShearMPa: number;
  pins: PinFigures[];
  im: ImFigures | null;
  columns: ColumnFigures[];
  /** Modulus of the tissue that bridges the fracture; null while nothing does. */
  callusYoungMPa: number | null;
  demand: Demand;
}

export const columnsOf = (construct: Construct) => [construct.column].flat();

/** The middle figures of a construct. The case and construct must have been checked. */
export function nominalFigures(patientCase: Case, construct: Construct): Figures {
  const { bone, drawer, fracture } = patientCase;
  const species = classOf(patientCase);
  const demand = demandOf(patientCase);
  const { im } = construct;
  return {
    profile: profileOf(bone.lengthMm, bone.stations, species),
    gapMm: fracture.gapMm,
    boneYoungMPa: bone.youngMPa ?? value(`bone.${species}.young`),
    boneYieldStrain: value('bone.yield-strain'),
    holeShare: 1,
    slack: construct.grip === 'bonded' ? 0 : value('interface.knock-down') - 1,
    bondShearMPa: value('column.bond-shear'),
    pins: construct.pins.map((pin) => pinFigures(found(drawer.pins, pin.drawerId), demand.cycles)),
    im: im ? imFigures(found(drawer.imPins, im.drawerId), demand.cycles) : null,
    columns: columnsOf(construct).map((c) => ({
      ...columnFigures(found(drawer.columns, c.drawerId), demand.cycles),
      moulded: materialOf(found(drawer.columns, c.drawerId).material, 'moulded').moulded,
      side: c.side ?? 'near',
      clearanceMm: c.clearanceMm,
    })),
    callusYoungMPa: null,
    demand,
  };
}

/** The drawer's entry of that id; a checked case always has it. */
export function found<T extends { readonly id: string }>(list: readonly T[], id: string): T {
  const item = list.find((entry) => entry.id === id);
  if (!item) throw new Error(`"${id}" is not in the drawer of a checked case`);
  return item;
}

function pinFigures(pin: DrawerPin, cycles: number): PinFigures {
  const needle = pin.kind === 'needle' && pin.gauge !== undefined ? needleSize(pin.gauge) : null;
  const threaded = pin.kind === 'threaded-end' || pin.kind === 'threaded-centre';
  const coreMm = threaded && pin.coreDiameterMm !== undefined ? pin.coreDiameterMm : pin.diameterMm;
  return { ...rod(pin, needle?.innerMm ?? 0, cycles), coreMm, threaded, freeByMm: 0 };
}

function rod(item: DrawerPin | DrawerImPin, boreMm: number, cycles: number): RodFigures {
  const material = materialOf(item.material, 'metal');
  const strengthScale = item.yieldMPa === undefined ? 1 : item.yieldMPa / value(material.yieldId);
  return {
    diameterMm: item.diameterMm,
    boreMm,
    youngMPa: item.youngMPa ?? value(material.youngId),
    poisson: value(material.poissonId),
    yieldMPa: item.yieldMPa ?? value(material.yieldId),
    fatigueMPa: strengthScale * fatigueStress(material, cycles),
  };
}

function imFigures(pin: DrawerImPin, cycles: number): ImFigures {
  const bent = materialOf('steel-annealed', 'metal');
  const straight = rod(pin, 0, cycles);
  return {
    ...straight,
    bentYieldMPa: Math.min(straight.yieldMPa, value(bent.yieldId)),
    bentFatigueMPa: Math.min(straight.fatigueMPa, fatigueStress(bent, cycles)),
  };
}

function columnFigures(column: DrawerColumn, cycles: number): RodFigures {
  const material = materialOf(column.material, 'moulded');
  const yieldMPa = column.yieldMPa ?? value(material.yieldId);
  return {
    diameterMm: column.diameterMm,
    boreMm: 0,
    youngMPa: column.youngMPa ?? value(material.youngId),
    poisson: value(material.poissonId),
    yieldMPa,
    fatigueMPa: (fatigueStress(material, cycles) * yieldMPa) / value(material.yieldId),
  };
}

/** Stress-life line of a metal in body fluid: straight in the logarithms between its two ends, level after. */
export function fatigueStress(material: Material, cycles: number): number {
  if (!material.fatigue) return value(material.yieldId) * value('column.working-share');
  const level = value(material.fatigue.levelId) * value('steel.saline-factor');
  const start = value(material.fatigue.ultimateId) * value('steel.low-cycle-share');
  const [first, last] = [Math.log(value('steel.low-cycle-count')), Math.log(value('steel.endurance-count'))];
  const t = Math.min(1, Math.max(0, (Math.log(cycles) - first) / (last - first)));
  return start ** (1 - t) * level ** t;
}
