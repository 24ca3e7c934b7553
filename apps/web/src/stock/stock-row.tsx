/** One thing of the stock: what it is, how much of which batch is left, and what can be put right about it. */
import { isExpired, itemWarnings, type StockItem, type StockLot, usable } from '@bonewright/casebook';
import { useState } from 'react';
import { VerdictWord } from '../drawing/verdict-mark.tsx';
import { ReasonDialog } from '../form/reason-dialog.tsx';
import { threeFigures } from '../plan/words.ts';
import { practiceRecord } from '../sync/records.ts';
import { moment, today } from '../words/time.ts';
import { CorrectLot } from './correct-lot.tsx';
import { LotBenchTest } from './lot-bench-test.tsx';
import { LowMark } from './low-mark.tsx';
import { amountWords, thingWords } from './thing-words.ts';

interface StockRowProps {
  readonly item: StockItem;
  readonly mayRecord: boolean;
}

export function StockRow({ item, mayRecord }: StockRowProps) {
  const [asks, ask] = useState<'low mark' | 'take out' | null>(null);
  const close = () => ask(null);
  const { id, thing, lowAt, lots } = item;
  return (
    <li className="stock-item">
      <div className="stock-what">
        <h3>{id}</h3>
        {thingWords(thing) !== id && <p className="caption">{thingWords(thing)}</p>}
        {thing.use !== 'column' && <Standing item={item} />}
        {lowAt !== null && <p className="caption">low at {amountWords(thing, lowAt)} or less</p>}
        {mayRecord && (
          <p className="stock-acts">
            {thing.use !== 'column' && (
              <button type="button" className="button-small" onClick={() => ask('low mark')}>
                Low mark<span className="sr-only"> of {id}</span>
              </button>
            )}
            <button type="button" className="button-small" onClick={() => ask('take out')}>
              Take out<span className="sr-only"> {id}</span>
            </button>
          </p>
        )}
      </div>
      {thing.use === 'column' ? (
        <p className="quiet">A shape to mould putty to; it is not counted.</p>
      ) : (
        <ul className="stock-lots" aria-label={`Batches of ${id}`}>
          {lots.map((lot) => (
            <Lot key={lot.batch} item={item} lot={lot} mayRecord={mayRecord} />
          ))}
        </ul>
      )}
      {asks === 'low mark' && <LowMark item={item} onClose={close} />}
      {asks === 'take out' && (
        <ReasonDialog
          title={`Take ${id} out of the stock`}
          common={['not bought any more', 'entered by mistake']}
          actions={[
            {
              word: 'Take it out',
              act: (why) => practiceRecord().append([{ kind: 'stock-withdrawn', payload: { itemId: id }, why }]),
            },
          ]}
          onClose={close}
        />
      )}
    </li>
  );
}

function Standing({ item }: { readonly item: StockItem }) {
  const warnings = itemWarnings(item, today());
  const worst = warnings.find(({ verdict }) => verdict === 'stop') ?? warnings[0];
  const words = `${amountWords(item.thing, usable(item, today()))} to use`;
  return (
    <p>
      <VerdictWord verdict={worst?.verdict ?? 'good'} word={words} />
    </p>
  );
}

interface LotProps extends StockRowProps {
  readonly lot: StockLot;
}

function Lot({ item, lot, mayRecord }: LotProps) {
  const [asks, ask] = useState<'count' | 'bench test' | null>(null);
  const { thing } = item;
  const { batch, left, expires, counted, test } = lot;
  const named = batch === '' ? `${item.id} without a batch` : `${item.id}, batch ${batch}`;
  return (
    <li className="stock-lot">
      <p>
        <b className="stock-left">{amountWords(thing, left)}</b>
        {batch === '' ? 'no batch known' : `batch ${batch}`}
        {expires !== null && (isExpired(lot, today()) ? `, past its day, ${expires}` : `, good until ${expires}`)}
      </p>
      {counted && (
        <p className="caption">
          Counted by {counted.by}, {moment(counted.at)}.
        </p>
      )}
      {thing.use === 'putty' && (
        <p className="caption">
          {test
            ? `Bench test, ${moment(test.value.testedAt)}: modulus ${spread(test.value.youngMPa)}, ${
                test.value.yieldMPa ? `strength ${spread(test.value.yieldMPa)}` : 'not broken'
              }.`
            : 'No bench test: plans take the registry’s figures, which are wide.'}
        </p>
      )}
      {mayRecord && (
        <p className="stock-acts">
          <button type="button" className="button-small" onClick={() => ask('count')}>
            Correct<span className="sr-only"> {named}</span>
          </button>
          {thing.use === 'putty' && (
            <button type="button" className="button-small" onClick={() => ask('bench test')}>
              Bench test<span className="sr-only"> of {named}</span>
            </button>
          )}
        </p>
      )}
      {asks === 'count' && <CorrectLot item={item} lot={lot} named={named} onClose={() => ask(null)} />}
      {asks === 'bench test' && <LotBenchTest itemId={item.id} batch={batch} named={named} onClose={() => ask(null)} />}
    </li>
  );
}

const spread = ({ value, sd }: { readonly value: number; readonly sd: number }): string =>
  `${threeFigures(value)} ± ${threeFigures(sd)} MPa`;
