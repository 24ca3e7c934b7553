/** Lengths to cut and what the construct weighs. Lengths in mm, masses in g. */
import { value } from '@bonewright/evidence';
import type { Case, Construct } from '../model/case-file.ts';
import { columnsOf, type Figures, found, nominalFigures, type RodFigures } from '../model/figures.ts';
import { materialOf } from '../model/materials.ts';
import { imTipMm } from './im-line.ts';
import { type Layout, layOut, type PinLayout } from './layout.ts';

/** From 1 mm past the far cortex (or the far column's far surface) to the near column's far surface. */
export function cutLengthMm(pin: PinLayout, { columns }: Figures): number {
  const ends = pin.entries.map(({ surfaceMm, embeddedMm }, c) =>
    columns[c]!.side === 'far' ? surfaceMm - embeddedMm : surfaceMm + embeddedMm,
  );
  const proud = value('interface.pin.proud');
  const tip = pin.cortices === 1 ? pin.nearMiddleMm : pin.farOuterMm;
  return Math.max(...ends, pin.nearOuterMm + proud) - Math.min(...ends, tip - proud);
}

/** Near wall to the near column's near surface, along the pin; the far ones where there is no near column. */
export function freeLengthMm(pin: PinLayout, { columns }: Figures): number {
  const near = columns.findIndex((c) => c.side === 'near');
  if (near >= 0) return pin.entries[near]!.surfaceMm - pin.nearOuterMm;
  return pin.farOuterMm - pin.entries[0]!.surfaceMm;
}

/** The IM pin from its tip to the bone's end, and on to the far side of the column where tied in. */
export function imLengthMm(patientCase: Case, figures: Figures, layout: Layout): number {
  const bend = layout.imBend;
  return imTipMm(patientCase, figures) + (bend ? bend.surfaceMm + bend.embeddedMm - bend.crossing[0] : 0);
}

const MM3_PER_CM3 = 1000;

function rodMass({ diameterMm, boreMm }: Pick<RodFigures, 'diameterMm' | 'boreMm'>, lengthMm: number, density: number) {
  return ((Math.PI / 4) * (diameterMm ** 2 - boreMm ** 2) * lengthMm * density) / MM3_PER_CM3;
}

/** What the checks need of a construct before it is solved. The construct must have been checked. */
export function frameFacts(patientCase: Case, construct: Construct) {
  const figures = nominalFigures(patientCase, construct);
  const layout = layOut(patientCase, construct, figures);
  return { figures, layout, ...massesOf(patientCase, construct, figures, layout) };
}

/** Mass of each column in the order of the construct's columns, and of everything together. */
export function massesOf(patientCase: Case, construct: Construct, figures: Figures, layout: Layout) {
  const { drawer } = patientCase;
  const density = (material: string, use: 'metal' | 'moulded') => value(materialOf(material, use).densityId);
  const columnMassesG = columnsOf(construct).map(({ drawerId }, c) => {
    const { fromMm, toMm } = layout.columns[c]!;
    return rodMass(figures.columns[c]!, toMm - fromMm, density(found(drawer.columns, drawerId).material, 'moulded'));
  });
  const pins = construct.pins.map(({ drawerId }, i) =>
    rodMass(
      figures.pins[i]!,
      cutLengthMm(layout.pins[i]!, figures),
      density(found(drawer.pins, drawerId).material, 'metal'),
    ),
  );
  const { im } = construct;
  const imMass =
    im && figures.im
      ? rodMass(
          figures.im,
          imLengthMm(patientCase, figures, layout),
          density(found(drawer.imPins, im.drawerId).material, 'metal'),
        )
      : 0;
  return { columnMassesG, massG: [...columnMassesG, ...pins].reduce((a, b) => a + b, imMass) };
}
