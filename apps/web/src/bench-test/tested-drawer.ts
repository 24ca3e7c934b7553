/** A drawer after a bench test: the columns of that putty carry what was measured. */
import type { Drawer } from '@bonewright/construct';
import type { BenchFigures } from './bench-test.tsx';

/** Every column of the same material as the one that was tested, whatever its diameter. */
export function withTested(
  drawer: Drawer,
  columnId: string,
  { youngMPa, yieldMPa }: Pick<BenchFigures, 'youngMPa' | 'yieldMPa'>,
): Drawer {
  const material = drawer.columns.find(({ id }) => id === columnId)?.material;
  const tested = {
    youngMPa: youngMPa.value,
    youngSdMPa: youngMPa.sd,
    // Not broken: the strength stays what it was.
    ...(yieldMPa && { yieldMPa: yieldMPa.value, yieldSdMPa: yieldMPa.sd }),
  };
  const columns = drawer.columns.map((column) => (column.material === material ? { ...column, ...tested } : column));
  return { ...drawer, columns };
}
