/** What the typed dose comes to: the volume to draw, large, how it came about, and every remark with room for its answer. */
import { type Judged, plain, type Remark, spelled } from '@bonewright/ward';
import { VerdictMark } from '../drawing/verdict-mark.tsx';
import { Field } from '../form/field.tsx';

interface WorkedDoseProps {
  readonly judged: Judged;
  readonly reasons: Readonly<Record<string, string>>;
  readonly onReason: (code: string, reason: string) => void;
}

export function WorkedDose({ judged, reasons, onReason }: WorkedDoseProps) {
  const { worked, line, remarks } = judged;
  const { unit, amount, drawnMl, exactMl, changePercent, recipe } = worked;
  return (
    <>
      <p className="dose-volume">
        {plain(drawnMl)} <span>ml</span>
      </p>
      <p>{spelled(plain(drawnMl))} millilitres</p>
      <p className="caption">
        {plain(line.dose.value)} {line.dose.unit} × {plain(line.massG)} g = {plain(amount)} {unit}; at{' '}
        {plain(worked.perMl)} {unit}/ml = {plain(exactMl)} ml, to the mark {plain(drawnMl)} ml (
        {changePercent > 0 ? '+' : ''}
        {changePercent.toFixed(1)} %).
      </p>
      {recipe && line.dilution && (
        <p className="dose-recipe">
          Mix first: {plain(recipe.drugMl)} ml of drug + {plain(recipe.diluentMl)} ml of {line.dilution.diluent} ={' '}
          {plain(recipe.totalMl)} ml of {plain(recipe.perMl)} {unit}/ml, one part in {line.dilution.parts}. Label it.
        </p>
      )}
      <ul className="dose-remarks">
        {remarks.map((remark) => (
          <RemarkItem key={remark.code} remark={remark} reason={reasons[remark.code] ?? ''} onReason={onReason} />
        ))}
      </ul>
    </>
  );
}

interface RemarkItemProps {
  readonly remark: Remark;
  readonly reason: string;
  readonly onReason: (code: string, reason: string) => void;
}

function RemarkItem({ remark: { code, words, needs }, reason, onReason }: RemarkItemProps) {
  if (needs === 'nothing') return <li>{words}</li>;
  return (
    <li className="dose-stop">
      <p className="verdict verdict-stop">
        <VerdictMark verdict="stop" />
        {needs === 'change' ? 'cannot be signed' : needs === 'second person' ? 'second person' : 'reason'}
      </p>
      <p>{words}</p>
      {needs !== 'change' && (
        <Field
          label={`Why, all the same: ${shortened(words)}`}
          value={reason}
          onChange={(text) => onReason(code, text)}
        />
      )}
    </li>
  );
}

const MOST_WORDS = 7;
const shortened = (words: string): string => {
  const all = words.split(' ');
  return all.length <= MOST_WORDS ? words : `${all.slice(0, MOST_WORDS).join(' ')} …`;
};
