/** Section numbers of everything that can fail, worked out once for a set of figures. */
import { ringProperties, sectionAt, widthAcross } from '@bonewright/bone';
import type { ColumnFigures, Figures } from '../model/figures.ts';
import type { Layout, PinLayout } from '../to-frame/layout.ts';
import { holeFactor } from './holes.ts';

export interface RodSection {
  readonly areaMm2: number;
  /** Outer radius over second moment: stress for each N·mm of bending; half of it for each of twist. */
  readonly bendingPerMm3: number;
}

export interface ColumnSection {
  readonly areaMm2: number;
  /** Stress for each N·mm about local y, about local z and about the column. */
  readonly aboutYPerMm3: number;
  readonly aboutZPerMm3: number;
  readonly twistPerMm3: number;
}

export interface HoleSection {
  readonly areaMm2: number;
  readonly aboutYPerMm3: number;
  readonly aboutZPerMm3: number;
  readonly twistPerMm3: number;
  /** Cosine and sine of the pin's direction about the bone. */
  readonly towards: readonly [number, number];
  /** Measured weakening by the hole. */
  readonly factor: number;
}

export interface PinSections {
  readonly shaft: RodSection;
  readonly core: RodSection;
  readonly hole: HoleSection;
  /** What it presses on at each wall, and what grips it in each column. */
  readonly pressedMm2: { readonly near: number; readonly far: number };
  readonly grippedMm2: readonly number[];
}

export interface Sections {
  readonly pins: readonly PinSections[];
  readonly im: RodSection | null;
  /** A column's section where a pin runs through it, by column and pin; last the IM pin. */
  readonly columns: readonly (readonly ColumnSection[])[];
}

export function sectionsOf(figures: Figures, layout: Layout): Sections {
  const through = [...figures.pins.map((p) => p.diameterMm), figures.im?.diameterMm ?? 0];
  return {
    pins: layout.pins.map((laid) => pinSections(figures, laid)),
    im: figures.im && rodSection(figures.im.diameterMm, figures.im.boreMm),
    columns: figures.columns.map((column) => through.map((slot) => columnSection(column, slot))),
  };
}

function pinSections(figures: Figures, laid: PinLayout): PinSections {
  const { diameterMm, coreMm, boreMm } = figures.pins[laid.index]!;
  return {
    shaft: rodSection(diameterMm, boreMm),
    core: rodSection(coreMm, boreMm),
    hole: holeSection(figures, laid),
    pressedMm2: { near: coreMm * laid.near.wallMm, far: coreMm * laid.far.wallMm },
    grippedMm2: laid.entries.map(({ embeddedMm }) => Math.PI * diameterMm * embeddedMm),
  };
}

export function rodSection(diameterMm: number, boreMm: number): RodSection {
  const second = (Math.PI / 64) * (diameterMm ** 4 - boreMm ** 4);
  return { areaMm2: (Math.PI / 4) * (diameterMm ** 2 - boreMm ** 2), bendingPerMm3: diameterMm / 2 / second };
}

/** A round column with a slot of the pin's width all along local y; what the pin itself bears is left out. */
export function columnSection({ diameterMm: d, moulded }: ColumnFigures, pinMm: number): ColumnSection {
  const slot = moulded ? Math.min(pinMm, d / 2) : 0;
  const full = (Math.PI / 64) * d ** 4;
  const aboutZ = full - (slot * d ** 3) / 12;
  const aboutY = full - (d * slot ** 3) / 12;
  return {
    areaMm2: (Math.PI / 4) * d ** 2 - slot * d,
    aboutYPerMm3: d / 2 / aboutY,
    aboutZPerMm3: d / 2 / aboutZ,
    twistPerMm3: d / 4 / aboutZ,
  };
}

function holeSection(figures: Figures, { index, crossing, direction }: PinLayout): HoleSection {
  const ring = sectionAt(figures.profile, crossing[0]);
  const { areaMm2, iyMm4, izMm4, jMm4 } = ringProperties(ring);
  const [y, z] = ring.outerMm;
  const about = Math.atan2(direction[2], direction[1]);
  const ratio = figures.pins[index]!.coreMm / widthAcross(ring, (about * 180) / Math.PI);
  return {
    areaMm2,
    aboutYPerMm3: z / 2 / iyMm4,
    aboutZPerMm3: y / 2 / izMm4,
    twistPerMm3: Math.max(y, z) / 2 / jMm4,
    towards: [Math.cos(about), Math.sin(about)],
    factor: holeFactor(ratio, figures.holeShare),
  };
}
