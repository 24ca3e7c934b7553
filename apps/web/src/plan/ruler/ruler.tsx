/** The bone along its ruler: everything at one scale, pins as marks to drag. */
import './ruler.css';
import type { Case, Construct, Plan } from '@bonewright/construct';
import type { Placement } from '../../drawing/geometry/placement.ts';
import { inPlane } from '../../drawing/geometry/side-profile.ts';
import { useSize } from '../../drawing/use-size.ts';
import { clearColumnBy, columnClearance } from '../edit/edits.ts';
import { Apart, RulerTicks } from './axis-parts.tsx';
import { alongOf, Bone, Grid, KeepOuts, SideLabels, Skin } from './bone-parts.tsx';
import { ColumnGrip } from './column-grip.tsx';
import { Columns, FreeLength, ImPin } from './frame-parts.tsx';
import type { RulerLayout } from './layout.ts';
import { Pins } from './pins.tsx';
import { useLayout } from './use-layout.ts';

export interface RulerEdit {
  readonly onSelect: (index: number) => void;
  readonly change: (construct: Construct, stroke?: string) => void;
}

export interface RulerProps {
  readonly patientCase: Case;
  readonly construct: Construct;
  readonly placement: Placement;
  readonly plan: Plan | null;
  readonly selected: number;
  /** Null where the ruler is only for reading. */
  readonly edit: RulerEdit | null;
}

/** On a screen of usual height the ruler ends with the page; on a higher one it grows. */
const USUAL_HEIGHT_PX = 322;
const SHARE_OF_SCREEN = 0.36;

export function Ruler(props: RulerProps) {
  const { patientCase, placement } = props;
  const [box, { width }] = useSize<HTMLDivElement>();
  const mostHeightPx = Math.max(USUAL_HEIGHT_PX, SHARE_OF_SCREEN * window.innerHeight);
  const layout = useLayout(patientCase, placement, width, mostHeightPx);
  return (
    <div ref={box} className="ruler">
      {layout && <Drawing {...props} layout={layout} />}
    </div>
  );
}

function Drawing(props: RulerProps & { readonly layout: RulerLayout }) {
  const { layout, construct, selected, edit } = props;
  const selectedPin = layout.placement.pins[selected];
  const along = alongOf(layout);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be a drawing
    <svg
      role="group"
      aria-label="The bone along its ruler"
      width={layout.widthPx}
      height={layout.heightPx}
      className="ruler-drawing"
    >
      <Grid {...along} />
      <KeepOuts layout={layout} />
      <Bone layout={layout} />
      <Skin layout={layout} />
      <Columns layout={layout} />
      <ImPin layout={layout} />
      {edit && (
        <ColumnGrip
          layout={layout}
          clearanceMm={columnClearance(construct.column)}
          onClear={(mm) => edit.change(clearColumnBy(construct, mm), 'column')}
        />
      )}
      <Pins {...props} />
      {selectedPin && edit && <FreeLength layout={layout} pin={selectedPin} />}
      {layout.hasLabels && <SideLabels names={sideLabels(layout)} />}
      <RulerTicks {...along} />
      <Apart layout={layout} placesMm={construct.pins.map((pin) => pin.sMm)} />
    </svg>
  );
}

function sideLabels({ placement, profile, scale, rulerY, apartY }: RulerLayout) {
  const column = placement.columns.find(({ side }) => side === 'near');
  const skin = profile.skin[0];
  return [
    ...(column ? [{ word: 'column', y: scale.y(inPlane(column.line[0]!, placement.aboutDeg)[1]) }] : []),
    ...(skin ? [{ word: 'skin', y: scale.y(skin[1]) }] : []),
    { word: placement.im ? 'IM pin' : 'bone', y: scale.y(0) },
    { word: 'ruler', y: rulerY + 14 },
    { word: 'apart, mm', y: apartY },
  ];
}
