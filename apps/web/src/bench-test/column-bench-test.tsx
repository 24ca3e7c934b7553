/** A bench test for a column of this patient's drawer, kept with the tub that it was made from. */
import { nextLot, type Stock } from '@bonewright/casebook';
import type { Drawer } from '@bonewright/construct';
import { useState } from 'react';
import { SelectField } from '../plan/edit/select-field.tsx';
import { figure } from '../plan/words.ts';
import type { Append } from '../sync/new-event.ts';
import { practiceRecord } from '../sync/records.ts';
import { usePractice } from '../sync/use-case.ts';
import { today } from '../words/time.ts';
import { type BenchFigures, BenchTest } from './bench-test.tsx';
import { withTested } from './tested-drawer.ts';

interface ColumnBenchTestProps {
  readonly drawer: Drawer;
  readonly append: Append;
  readonly onClose: () => void;
}

export function ColumnBenchTest({ drawer, append, onClose }: ColumnBenchTestProps) {
  const [columnId, choose] = useState(drawer.columns[0]?.id ?? '');
  const { stock } = usePractice().state;
  const tub = tubOf(stock, drawer.columns.find((column) => column.id === columnId)?.material, today());
  const use = (figures: BenchFigures) => {
    append([
      { kind: 'bench-tested', payload: { columnId, ...figures } },
      { kind: 'drawer-set', payload: withTested(drawer, columnId, figures), why: 'bench test of the putty' },
    ]);
    if (tub) practiceRecord().append([{ kind: 'putty-tested', payload: { ...tub, ...figures } }]);
  };
  return (
    <BenchTest draftKey="bench-test" onFound={use} onClose={onClose}>
      <SelectField
        label="Which column of the drawer is of this putty"
        value={columnId}
        options={drawer.columns.map((column) => [column.id, `${column.id}, ${figure(column.diameterMm)} mm`])}
        onChange={choose}
      />
      {tub && (
        <p className="caption">
          Kept with {tub.itemId}
          {tub.batch === '' ? '' : `, batch ${tub.batch}`}, the next to be used: plans of other patients take it too.
        </p>
      )}
    </BenchTest>
  );
}

/** The tub in the practice's drawer that a bar of that material was made from; null where none is counted in. */
function tubOf(stock: Stock, material: string | undefined, day: string) {
  const putty = stock.items.find(({ thing }) => thing.use === 'putty' && thing.material === material);
  const lot = putty && nextLot(putty, day);
  return lot ? { itemId: putty.id, batch: lot.batch } : null;
}
