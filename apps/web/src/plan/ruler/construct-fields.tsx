/** What holds for the whole construct: IM pin, column, and how far it stands off the skin. */
import type { Construct, Drawer } from '@bonewright/construct';
import { memo } from 'react';
import { changeColumn, changeIm, clearColumnBy, columnClearance } from '../edit/edits.ts';
import { NumberField } from '../edit/number-field.tsx';
import { SelectField } from '../edit/select-field.tsx';
import { figure } from '../words.ts';

interface ConstructFieldsProps {
  readonly drawer: Drawer;
  readonly im: Construct['im'];
  readonly column: Construct['column'];
  readonly change: (edit: (construct: Construct) => Construct) => void;
}

const NONE = 'none';
const TIED = 'tied in';
const FREE = 'left free';

export const ConstructFields = memo(({ drawer, im, column, change }: ConstructFieldsProps) => {
  return (
    <div className="construct-fields">
      <SelectField
        label="IM pin"
        value={im ? imKey(im.drawerId, im.tiedIn) : NONE}
        options={imOptions(drawer)}
        onChange={(key) => change((construct) => changeIm(construct, imOf(drawer, key)))}
      />
      <SelectField
        label="Column"
        value={[column].flat()[0]?.drawerId ?? NONE}
        options={drawer.columns.map(({ id, diameterMm }) => [id, `${figure(diameterMm)} mm, ${id}`])}
        onChange={(drawerId) => change((construct) => changeColumn(construct, drawerId))}
      />
      <NumberField
        label="Column clear of the skin"
        unit="mm"
        step={0.5}
        min={0}
        value={columnClearance(column)}
        onChange={(mm) => change((construct) => clearColumnBy(construct, mm))}
      />
    </div>
  );
});

const imKey = (drawerId: string, tiedIn: boolean): string => `${tiedIn ? TIED : FREE} ${drawerId}`;

function imOptions({ imPins }: Drawer): (readonly [string, string])[] {
  const each = imPins.flatMap(({ id, diameterMm }) =>
    [true, false].map((tiedIn) => [imKey(id, tiedIn), `${figure(diameterMm, 2)} mm, ${tiedIn ? TIED : FREE}`] as const),
  );
  return [[NONE, NONE], ...each];
}

function imOf({ imPins }: Drawer, key: string): Construct['im'] {
  for (const { id } of imPins)
    for (const tiedIn of [true, false]) if (imKey(id, tiedIn) === key) return { drawerId: id, tiedIn };
  return null;
}
