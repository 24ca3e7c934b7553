/** What may be off in pins, IM pin and columns. What the drawer states for itself is taken as it stands. */
import type { Case, Construct } from '../model/case-file.ts';
import { columnsOf, type Figures, found, type RodFigures } from '../model/figures.ts';
import { materialOf } from '../model/materials.ts';
import { pinName } from '../to-frame/pin-part.ts';
import { type Input, offBy, scaledBy } from './input.ts';

/** One input a property, for all pins of one material together. */
export function metalInputs({ drawer }: Case, construct: Construct): Input[] {
  const pins = construct.pins.map((pin) => found(drawer.pins, pin.drawerId));
  const im = construct.im ? found(drawer.imPins, construct.im.drawerId) : null;
  const items = im ? [...pins, im] : pins;
  return [...new Set(items.map((item) => item.material))].flatMap((name) => {
    const material = materialOf(name, 'metal');
    const made = items.filter((item) => item.material === name);
    const rods = (f: Figures): RodFigures[] => [
      ...f.pins.filter((_, i) => pins[i]!.material === name),
      ...(f.im && im?.material === name ? [f.im] : []),
    ];
    const each = (words: string, id: string, key: 'youngMPa' | 'yieldMPa' | 'fatigueMPa') =>
      scaledBy(`${words} of ${name}`, id, (f, factor) => {
        for (const rod of rods(f)) rod[key] *= factor;
      });
    const isStated = (key: 'youngMPa' | 'yieldMPa') => made.some((item) => item[key] !== undefined);
    return [
      ...(isStated('youngMPa') ? [] : [each('stiffness', material.youngId, 'youngMPa')]),
      ...(isStated('yieldMPa') ? [] : [each('yield stress', material.yieldId, 'yieldMPa')]),
      each('fatigue strength', material.fatigue?.levelId ?? material.yieldId, 'fatigueMPa'),
    ];
  });
}

/** Sizes of pins: all off their name alike, each with its own free length. */
export function pinInputs(construct: Construct): Input[] {
  return [
    offBy('diameter of the pins', 'steel.diameter-sd-share', (f, off) => {
      for (const pin of f.pins) {
        pin.diameterMm *= 1 + off;
        pin.coreMm *= 1 + off;
        pin.boreMm *= 1 + off;
      }
    }),
    ...construct.pins.map((_, i) =>
      offBy(`free length of ${pinName(i)}`, 'column.free-length-sd', (f, offMm) => {
        f.pins[i]!.freeByMm += offMm;
      }),
    ),
  ];
}

export function columnInputs({ drawer }: Case, construct: Construct): Input[] {
  const choices = columnsOf(construct).map((c) => found(drawer.columns, c.drawerId));
  return choices.flatMap((item, c) => {
    const { youngId, yieldId, moulded } = materialOf(item.material, 'moulded');
    const which = choices.length > 1 ? `column ${c + 1}` : 'column';
    const height = offBy(`height of the ${which} over the skin`, 'column.clearance-sd', (f, offMm) => {
      const column = f.columns[c]!;
      column.clearanceMm = Math.max(0, column.clearanceMm + offMm);
    });
    const stronger = (f: Figures, factor: number) => {
      f.columns[c]!.yieldMPa *= factor;
      f.columns[c]!.fatigueMPa *= factor;
    };
    const stiffer = (f: Figures, factor: number) => {
      f.columns[c]!.youngMPa *= factor;
    };
    const { yieldMPa, yieldSdMPa, youngMPa, youngSdMPa } = item;
    const size = offBy(`diameter of the ${which}`, 'column.diameter-sd-share', (f, off) => {
      f.columns[c]!.diameterMm *= Math.exp(off);
    });
    return [
      height,
      ...(yieldMPa === undefined
        ? [scaledBy(`strength of the ${which}`, yieldId, stronger)]
        : statedInput(`tested strength of the ${which}`, yieldMPa, yieldSdMPa, stronger)),
      ...(youngMPa === undefined
        ? [scaledBy(`modulus of the ${which}`, youngId, stiffer)]
        : statedInput(`tested modulus of the ${which}`, youngMPa, youngSdMPa, stiffer)),
      ...(moulded ? [size] : []),
    ];
  });
}

/** What the drawer states with a spread of its own, drawn so that it stays above 0; without one it is exact. */
function statedInput(
  words: string,
  middle: number,
  sd: number | undefined,
  apply: (figures: Figures, factor: number) => void,
): Input[] {
  if (!sd) return [];
  return [{ words, evidence: null, move: ({ figures }, z) => apply(figures, Math.exp((z * sd) / middle)) }];
}
