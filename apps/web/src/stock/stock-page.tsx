/** The practice's stock: what lies in the drawer by batch, what to see to first, and how it came to be so. */
import './stock.css';
import { holds, type Stock, type StockItem, stockWarnings } from '@bonewright/casebook';
import { PracticePage } from '../doses/practice-page.tsx';
import { VerdictMark, VerdictWord } from '../drawing/verdict-mark.tsx';
import { useSession } from '../sync/session.ts';
import { usePractice } from '../sync/use-case.ts';
import { today } from '../words/time.ts';
import { PutIn } from './put-in.tsx';
import { StockHistory } from './stock-history.tsx';
import { StockRow } from './stock-row.tsx';

const GROUPS = [
  ['pin', 'Pins and needles'],
  ['im-pin', 'IM pins'],
  ['column', 'Columns'],
  ['putty', 'Putty'],
] as const;

export function StockPage() {
  const { state, recorded, refused } = usePractice();
  const { person } = useSession();
  const mayRecord = person === null || holds({ ...person, cases: null }, 'record in the practice');
  return (
    <PracticePage title="Stock">
      <p className="lead">
        Pins, needles, columns and putty of the practice, by batch. Plans are made from it; theatre takes from it what
        went in.
      </p>
      {refused.length > 0 && (
        <p className="stock-warning" role="alert">
          <VerdictMark verdict="stop" />
          <span>
            {refused.length === 1 ? '1 entry was' : `${refused.length} entries were`} not taken by the server.
          </span>
        </p>
      )}
      <ToSeeTo stock={state.stock} />
      {GROUPS.map(([use, title]) => (
        <Group
          key={use}
          title={title}
          items={state.stock.items.filter(({ thing }) => thing.use === use)}
          mayRecord={mayRecord}
        />
      ))}
      {mayRecord && <PutIn stock={state.stock} />}
      <StockHistory recorded={recorded} />
    </PracticePage>
  );
}

function ToSeeTo({ stock }: { readonly stock: Stock }) {
  const warnings = stockWarnings(stock, today());
  if (stock.items.length === 0) return <p className="quiet">Nothing is counted in yet.</p>;
  if (warnings.length === 0)
    return (
      <p>
        <VerdictWord verdict="good" word="nothing is low, past its day or mis-tallied" />
      </p>
    );
  return (
    <section aria-labelledby="stock-see-to">
      <h2 id="stock-see-to">To see to</h2>
      <ul className="stock-warnings">
        {warnings.map(({ verdict, words }) => (
          <li key={words} className="stock-warning">
            <VerdictMark verdict={verdict} />
            <span>
              <b className={`verdict-${verdict}`}>{verdict}</b> {words}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

interface GroupProps {
  readonly title: string;
  readonly items: readonly StockItem[];
  readonly mayRecord: boolean;
}

function Group({ title, items, mayRecord }: GroupProps) {
  if (items.length === 0) return null;
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      <ul className="stock-items">
        {items.map((item) => (
          <StockRow key={item.id} item={item} mayRecord={mayRecord} />
        ))}
      </ul>
    </section>
  );
}
