/** The drawer as the practice's stock had it when it was opened; kept for this patient and for the next. */
import type { Drawer } from '@bonewright/construct';
import { useState } from 'react';
import { practiceRecord } from '../../sync/records.ts';
import { today } from '../../words/time.ts';
import { practiceDrawer } from '../planned-case.ts';
import { DrawerDialog } from './drawer-dialog.tsx';
import { stockEntries } from './keep-in-stock.ts';

interface StockDrawerProps {
  /** Stands in where the practice has none. */
  readonly patientDrawer: Drawer;
  readonly isStart: boolean;
  readonly onKeep: (drawer: Drawer) => void;
  readonly onClose: () => void;
}

export function StockDrawer({ patientDrawer, isStart, onKeep, onClose }: StockDrawerProps) {
  // What others take meanwhile must not look like a row that was changed here.
  const [stock] = useState(() => practiceRecord().snapshot().state.stock);
  const keep = (drawer: Drawer) => {
    onKeep(drawer);
    const entries = stockEntries(drawer, stock, today());
    if (entries.length > 0) practiceRecord().append(entries);
  };
  return (
    <DrawerDialog drawer={practiceDrawer(stock) ?? patientDrawer} isStart={isStart} onKeep={keep} onClose={onClose} />
  );
}
