/** The drawer's three tables: pins and needles, IM pins, columns. */
import type { Drawer, DrawerColumn, DrawerImPin, DrawerPin } from '@bonewright/construct';
import { entries } from '@bonewright/evidence';
import type { ReactNode } from 'react';
import { NumberField } from '../edit/number-field.tsx';
import { SelectField } from '../edit/select-field.tsx';
import { figure, KIND_WORDS } from '../words.ts';
import { freshId } from './fresh-id.ts';
import { COLUMN_MATERIALS, MATERIAL_WORDS, PIN_MATERIALS } from './materials.ts';
import { ofMaterial } from './of-material.ts';

interface RowsProps {
  readonly draft: Drawer;
  readonly onChange: (drawer: Drawer) => void;
}

const LEAST_MM = 0.1;
const USUAL_GAUGE = 21;

/** A needle's size follows from its gauge where the gauge is known. */
function needle(gauge: number): Partial<DrawerPin> {
  const outer = entries.find(({ id }) => id === `needle.${gauge}.outer`);
  return outer ? { gauge, diameterMm: outer.value } : { gauge };
}

export function PinRows({ draft, onChange }: RowsProps) {
  const set = (pins: DrawerPin[]) => onChange({ ...draft, pins });
  const become = (at: number, row: DrawerPin) => set(draft.pins.map((each, i) => (i === at ? row : each)));
  const change = (at: number, to: Partial<DrawerPin>) =>
    set(draft.pins.map((row, i) => (i === at ? { ...row, ...to } : row)));
  return (
    <Table
      className="drawer-pins"
      title="Pins and needles"
      onAdd={() =>
        set([
          ...draft.pins,
          { id: freshId(draft, 'pin'), diameterMm: 1, kind: 'smooth', material: PIN_MATERIALS[0], count: 1 },
        ])
      }
      addWord="Another pin size"
    >
      {draft.pins.map((row, i) => (
        <Row
          key={row.id}
          name={`${figure(row.diameterMm, 2)} mm ${KIND_WORDS[row.kind]}`}
          onRemove={() => set(draft.pins.filter((_, k) => k !== i))}
        >
          <SelectField
            label="Kind"
            value={row.kind}
            options={KINDS}
            onChange={(kind) => change(i, kind === 'needle' ? { kind, ...needle(row.gauge ?? USUAL_GAUGE) } : { kind })}
          />
          <NumberField
            label="Diameter"
            unit="mm"
            step={0.1}
            min={LEAST_MM}
            value={row.diameterMm}
            onChange={(diameterMm) => change(i, { diameterMm })}
          />
          <div className="drawer-more">
            {row.kind === 'needle' && (
              <NumberField
                label="Gauge"
                unit="G"
                step={1}
                min={1}
                value={row.gauge ?? 0}
                onChange={(gauge) => change(i, needle(Math.round(gauge)))}
              />
            )}
            {row.kind.startsWith('threaded') && (
              <NumberField
                label="Core"
                unit="mm"
                step={0.1}
                min={LEAST_MM}
                value={row.coreDiameterMm ?? row.diameterMm}
                onChange={(coreDiameterMm) => change(i, { coreDiameterMm })}
              />
            )}
          </div>
          <MetalStock
            row={row}
            onMaterial={(material) => become(i, ofMaterial(row, material))}
            onCount={(count) => change(i, { count })}
          />
        </Row>
      ))}
    </Table>
  );
}

interface MetalStockProps {
  readonly row: Pick<DrawerPin, 'material' | 'count'>;
  readonly onMaterial: (material: string) => void;
  readonly onCount: (count: number) => void;
}

/** What every wire has, whatever it is for: its metal, and how many there are. */
function MetalStock({ row, onMaterial, onCount }: MetalStockProps) {
  return (
    <>
      <SelectField label="Material" value={row.material} options={named(PIN_MATERIALS)} onChange={onMaterial} />
      <NumberField
        label="Count"
        unit=""
        step={1}
        min={0}
        value={row.count}
        onChange={(count) => onCount(Math.round(count))}
      />
    </>
  );
}

export function ImRows({ draft, onChange }: RowsProps) {
  const set = (imPins: DrawerImPin[]) => onChange({ ...draft, imPins });
  const become = (at: number, row: DrawerImPin) => set(draft.imPins.map((each, i) => (i === at ? row : each)));
  const change = (at: number, to: Partial<DrawerImPin>) =>
    set(draft.imPins.map((row, i) => (i === at ? { ...row, ...to } : row)));
  return (
    <Table
      className="drawer-im"
      title="IM pins"
      onAdd={() =>
        set([...draft.imPins, { id: freshId(draft, 'im'), diameterMm: 1, material: PIN_MATERIALS[0], count: 1 }])
      }
      addWord="Another IM pin"
    >
      {draft.imPins.map((row, i) => (
        <Row
          key={row.id}
          name={`${figure(row.diameterMm, 2)} mm IM pin`}
          onRemove={() => set(draft.imPins.filter((_, k) => k !== i))}
        >
          <NumberField
            label="Diameter"
            unit="mm"
            step={0.1}
            min={LEAST_MM}
            value={row.diameterMm}
            onChange={(diameterMm) => change(i, { diameterMm })}
          />
          <MetalStock
            row={row}
            onMaterial={(material) => become(i, ofMaterial(row, material))}
            onCount={(count) => change(i, { count })}
          />
        </Row>
      ))}
    </Table>
  );
}

export function ColumnRows({ draft, onChange }: RowsProps) {
  const set = (columns: DrawerColumn[]) => onChange({ ...draft, columns });
  const become = (at: number, row: DrawerColumn) => set(draft.columns.map((each, i) => (i === at ? row : each)));
  const change = (at: number, to: Partial<DrawerColumn>) =>
    set(draft.columns.map((row, i) => (i === at ? { ...row, ...to } : row)));
  return (
    <Table
      className="drawer-columns"
      title="Columns"
      onAdd={() =>
        set([...draft.columns, { id: freshId(draft, 'column'), material: COLUMN_MATERIALS[0], diameterMm: 6 }])
      }
      addWord="Another column"
    >
      {draft.columns.map((row, i) => (
        <Row
          key={row.id}
          name={`${figure(row.diameterMm)} mm column`}
          onRemove={() => set(draft.columns.filter((_, k) => k !== i))}
        >
          <NumberField
            label="Diameter"
            unit="mm"
            step={0.5}
            min={LEAST_MM}
            value={row.diameterMm}
            onChange={(diameterMm) => change(i, { diameterMm })}
          />
          <SelectField
            label="Material"
            value={row.material}
            options={named(COLUMN_MATERIALS)}
            onChange={(material) => become(i, ofMaterial(row, material))}
          />
        </Row>
      ))}
    </Table>
  );
}

const named = (materials: readonly string[]) => materials.map((id) => [id, MATERIAL_WORDS[id] ?? id] as const);

const KINDS = (['smooth', 'threaded-end', 'threaded-centre', 'needle'] as const).map(
  (kind) => [kind, KIND_WORDS[kind]] as const,
);

interface TableProps {
  readonly className: string;
  readonly title: string;
  readonly addWord: string;
  readonly onAdd: () => void;
  readonly children: ReactNode;
}

function Table({ className, title, addWord, onAdd, children }: TableProps) {
  return (
    <section className={`drawer-table ${className}`}>
      <h3>{title}</h3>
      <ul>{children}</ul>
      <button type="button" className="button" onClick={onAdd}>
        {addWord}
      </button>
    </section>
  );
}

function Row({
  name,
  onRemove,
  children,
}: {
  readonly name: string;
  readonly onRemove: () => void;
  readonly children: ReactNode;
}) {
  return (
    <li>
      <fieldset className="drawer-row">
        <legend className="sr-only">{name}</legend>
        {children}
        <button type="button" className="button-small" onClick={onRemove}>
          Take out<span className="sr-only">{` ${name}`}</span>
        </button>
      </fieldset>
    </li>
  );
}
