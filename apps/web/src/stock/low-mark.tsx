/** The amount at which a thing is said to be low. */
import type { StockItem } from '@bonewright/casebook';
import { useState } from 'react';
import { Field } from '../form/field.tsx';
import { numberFault, readNumber } from '../form/read-number.ts';
import { ReasonDialog } from '../form/reason-dialog.tsx';
import { practiceRecord } from '../sync/records.ts';

export function LowMark({ item, onClose }: { readonly item: StockItem; readonly onClose: () => void }) {
  const { id, thing, lowAt, isDemonstration } = item;
  const [text, set] = useState(lowAt === null ? '' : String(lowAt));
  const fault = numberFault(text, { from0: true });
  const keep = (why: string) => {
    const kept = isDemonstration ? ({ demonstration: true } as const) : {};
    const payload = { itemId: id, thing, lowAt: readNumber(text), ...kept };
    practiceRecord().append([{ kind: 'stock-described', payload, why }]);
  };
  return (
    <ReasonDialog
      title={`Low mark of ${id}`}
      common={['one operation’s worth', 'delivery takes long']}
      actions={fault ? [] : [{ word: 'Set it', act: keep }]}
      onClose={onClose}
    >
      <Field
        label="Say that it is low at"
        unit={thing.use === 'putty' ? 'g' : 'pieces'}
        inputMode="decimal"
        value={text}
        onChange={set}
        why={fault}
        help="Empty: it is never said to be low, only when none is left."
      />
    </ReasonDialog>
  );
}
