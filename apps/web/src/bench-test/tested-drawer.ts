/** A drawer after a bench test: the columns of that putty carry what was measured. */
import type { Drawer } from '@bonewright/construct';

interface Tested {
  readonly youngMPa: number;
  /** Null where the bar was not broken: the strength stays what it was. */
  readonly yieldMPa: number | null;
}

/** Every column of the same material as the one that was tested, whatever its diameter. */
export function withTested(drawer: Drawer, columnId: string, { youngMPa, yieldMPa }: Tested): Drawer {
  const material = drawer.columns.find(({ id }) => id === columnId)?.material;
  const columns = drawer.columns.map((column) =>
    column.material === material ? { ...column, youngMPa, ...(yieldMPa === null ? {} : { yieldMPa }) } : column,
  );
  return { ...drawer, columns };
}
