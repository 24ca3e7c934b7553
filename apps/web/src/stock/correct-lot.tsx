/** What was counted by hand, or what the label really says, in place of what stands here; with a reason. */
import type { StockItem, StockLot } from '@bonewright/casebook';
import { useState } from 'react';
import { Field } from '../form/field.tsx';
import { numberFault, readNumber } from '../form/read-number.ts';
import { ReasonDialog } from '../form/reason-dialog.tsx';
import type { NewPracticeEvent } from '../sync/new-event.ts';
import { practiceRecord } from '../sync/records.ts';
import { amountWords } from './thing-words.ts';

interface CorrectLotProps {
  readonly item: StockItem;
  readonly lot: StockLot;
  /** The batch in words. */
  readonly named: string;
  readonly onClose: () => void;
}

export function CorrectLot({ item, lot, named, onClose }: CorrectLotProps) {
  // What stood here when it was opened: what others take meanwhile is not what was counted against.
  const [seen] = useState(lot);
  const [left, setLeft] = useState('');
  const [expires, setExpires] = useState(seen.expires ?? '');
  const isPutty = item.thing.use === 'putty';
  const amount = readNumber(left);
  const fault = numberFault(left, { from0: true }) ?? wholeFault(amount, isPutty);
  const correct = (why: string) => {
    const of = { itemId: item.id, batch: seen.batch };
    const entries: NewPracticeEvent[] = [];
    if (amount !== null && !fault)
      entries.push({ kind: 'stock-counted', payload: { ...of, left: amount, insteadOf: seen.left }, why });
    if (expires !== (seen.expires ?? ''))
      entries.push({ kind: 'stock-dated', payload: { ...of, expires: expires || null }, why });
    if (entries.length > 0) practiceRecord().append(entries);
  };
  return (
    <ReasonDialog
      title={`Correct ${named}`}
      common={['counted again', 'dropped or bent', 'typed wrongly', 'used without a plan']}
      actions={fault ? [] : [{ word: 'Correct it', act: correct }]}
      onClose={onClose}
    >
      <p>
        It says {amountWords(item.thing, seen.left)}
        {seen.expires === null ? '' : `, good until ${seen.expires}`}.
      </p>
      <Field
        label="Counted, left"
        unit={isPutty ? 'g' : 'pieces'}
        inputMode="decimal"
        value={left}
        onChange={setLeft}
        why={fault}
        help="Leave it empty where the count is right."
      />
      <Field label="Good until, as on the label" type="date" value={expires} onChange={setExpires} />
    </ReasonDialog>
  );
}

const wholeFault = (amount: number | null, isPutty: boolean): string | null =>
  amount === null || isPutty || Number.isInteger(amount) ? null : 'Pins are counted in whole pieces.';
