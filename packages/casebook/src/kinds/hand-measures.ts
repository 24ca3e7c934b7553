/** Measurements by hand on a film: recorded as the places that were clicked; what they give follows from the film's scale. */
import { z } from 'zod';
import type { Signed } from '../case-state.ts';
import type { EventOf } from '../events.ts';
import { pixelSchema } from '../film-shapes.ts';
import type { Frozen } from '../frozen.ts';
import { idSchema } from '../payloads.ts';
import { signed } from '../signed.ts';

const pixels = <N extends number>(count: N) => z.array(pixelSchema).length(count);
const found = {
  filmId: idSchema,
  /** Of the measurement: recorded again under the same id it was moved. */
  measureId: idSchema,
  /** What it gave when it was recorded; null where the film did not say. */
  found: z
    .strictObject({ value: z.number(), sd: z.number().min(0).nullable(), unit: z.enum(['mm', 'px', 'deg']) })
    .nullable(),
};

export const handMeasured = z.discriminatedUnion('measure', [
  z.strictObject({ ...found, measure: z.literal('length'), points: pixels(2) }),
  /** A point on one leg, the corner, a point on the other leg. */
  z.strictObject({ ...found, measure: z.literal('angle'), points: pixels(3) }),
  /** Two points along the bone, then its two edges. */
  z.strictObject({ ...found, measure: z.literal('diameter'), points: pixels(4) }),
]);

export const handMeasureTakenBack = z.strictObject({ filmId: found.filmId, measureId: found.measureId });

export type HandMeasurement = Frozen<z.output<typeof handMeasured>>;

/** The measurements of one film that stand, in the order of the first. */
export function applyHandMeasure(
  measures: readonly Signed<HandMeasurement>[],
  event: EventOf<'hand-measured' | 'hand-measure-taken-back'>,
): readonly Signed<HandMeasurement>[] {
  const { measureId } = event.payload;
  const isSame = ({ value }: Signed<HandMeasurement>) => value.measureId === measureId;
  if (event.kind === 'hand-measure-taken-back') return measures.filter((one) => !isSame(one));
  const said = signed(event, event.payload);
  return measures.some(isSame) ? measures.map((one) => (isSame(one) ? said : one)) : [...measures, said];
}

const UNITS = { mm: ' mm', px: ' pixels', deg: ' degrees' } as const;

export function handMeasuredWords({ measure, found: what }: HandMeasurement): string {
  const name = `${measure === 'angle' ? 'Angle' : measure === 'length' ? 'Length' : 'Diameter'} measured by hand`;
  if (!what) return `${name}: the points do not say.`;
  return `${name}: ${what.value.toFixed(what.unit === 'mm' ? 2 : 1)}${UNITS[what.unit]}.`;
}
