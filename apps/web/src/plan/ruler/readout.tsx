/** What is true of the selected pin, with fields to type it instead of dragging. */
import { byWorry, type Case, type Construct, directionWords, type Plan } from '@bonewright/construct';
import { distance, type Placement } from '../../drawing/geometry/placement.ts';
import { VerdictWord } from '../../drawing/verdict-mark.tsx';
import { changePinSize, movePinTo, tiltPinTo, turnPinTo } from '../edit/edits.ts';
import { NumberField } from '../edit/number-field.tsx';
import { SelectField } from '../edit/select-field.tsx';
import { figure, KIND_WORDS, tiltWords } from '../words.ts';
import { SectionDial } from './section-dial.tsx';

interface ReadoutProps {
  readonly patientCase: Case;
  readonly construct: Construct;
  readonly plan: Plan | null;
  readonly index: number;
  readonly placement: Placement;
  readonly change: (construct: Construct, stroke?: string) => void;
}

export function Readout({ patientCase, construct, plan, index, placement, change }: ReadoutProps) {
  const pin = construct.pins[index];
  const placed = placement.pins[index];
  if (!pin || !placed) return null;
  const name = `P${index + 1}`;
  const concerns = (plan?.checks ?? []).filter(
    (check) => check.pin === index + 1 && check.verdict !== 'good' && check.id !== 'pin-ratio',
  );
  const turn = (aboutDeg: number) => change(turnPinTo(construct, index, aboutDeg), `turn ${index}`);
  return (
    <section className="readout" aria-label={`${name}, selected`}>
      <h3>{`${name} at ${figure(pin.sMm)} mm`}</h3>
      <p>{`${fromFracture(patientCase, pin.sMm)}, free length ${figure(distance(placed.nearWall, placed.columnNear))} mm`}</p>
      <p>{`${directionWords(pin.aboutDeg)}, ${tiltWords(pin.tiltDeg)}`}</p>
      <Ratio plan={plan} index={index} />
      {concerns.toSorted(byWorry).map((check) => (
        <VerdictWord key={check.id} verdict={check.verdict} word={check.because} />
      ))}
      <SectionDial patientCase={patientCase} construct={construct} index={index} onTurn={turn} />
      <div className="readout-fields">
        <NumberField
          label="Place"
          unit="mm"
          step={0.5}
          value={pin.sMm}
          onChange={(mm) => change(movePinTo(construct, index, mm, patientCase.bone.lengthMm))}
        />
        <NumberField label="Turn" unit="°" step={5} value={pin.aboutDeg} onChange={turn} />
        <NumberField
          label="Tilt"
          unit="°"
          step={1}
          value={pin.tiltDeg}
          onChange={(deg) => change(tiltPinTo(construct, index, deg), `tilt ${index}`)}
        />
      </div>
      <SelectField
        label={`Size of ${name}`}
        value={pin.drawerId}
        options={patientCase.drawer.pins.map((row) => [
          row.id,
          `${figure(row.diameterMm, 2)} mm ${KIND_WORDS[row.kind]}`,
        ])}
        onChange={(drawerId) => change(changePinSize(construct, index, drawerId))}
      />
    </section>
  );
}

function Ratio({ plan, index }: { readonly plan: Plan | null; readonly index: number }) {
  const pin = plan?.pins[index];
  if (!pin) return null;
  const check = plan.checks.find(({ id, pin: about }) => id === 'pin-ratio' && about === index + 1);
  return (
    <VerdictWord verdict={check?.verdict ?? 'good'} word={`${figure(pin.ratio * 100, 0)} % of the bone's width`} />
  );
}

function fromFracture({ fracture: { fromMm, toMm } }: Case, sMm: number): string {
  if (sMm >= fromMm && sMm <= toMm) return 'in the fracture';
  return `${figure(sMm < fromMm ? fromMm - sMm : sMm - toMm)} from the fracture`;
}
