/** The bone along its ruler while pins go in: filled what is in, moss what is now, dashed what comes next. */
import type { Case, Construct } from '@bonewright/construct';
import { useMemo } from 'react';
import { type PlacedPin, place } from '../drawing/geometry/placement.ts';
import { inPlane } from '../drawing/geometry/side-profile.ts';
import { Rod } from '../drawing/rod.tsx';
import { pathOf } from '../drawing/scale.ts';
import { useSize } from '../drawing/use-size.ts';
import { RulerTicks } from '../plan/ruler/axis-parts.tsx';
import { alongOf, Bone, Grid, KeepOuts, Skin } from '../plan/ruler/bone-parts.tsx';
import { Columns, ImPin } from '../plan/ruler/frame-parts.tsx';
import { BALLOON_PX, type RulerLayout, spreadBalloons } from '../plan/ruler/layout.ts';
import { useLayout } from '../plan/ruler/use-layout.ts';
import type { PinDoing } from './in-theatre.ts';

interface TheatreRulerProps {
  readonly patientCase: Case;
  readonly construct: Construct;
  /** The plan's number of each pin of the construct. */
  readonly numbers: readonly number[];
  readonly doing: (pin: number) => PinDoing;
  /** Where the plan had the pin that is now, in mm. */
  readonly plannedMm: number | null;
  readonly says: string;
}

/** The place that the layout keeps for distances between pins is not used here. */
const LEAST_HEIGHT_PX = 224;
const SHARE_OF_SCREEN = 0.25;

const heightPx = (): number => Math.max(LEAST_HEIGHT_PX, SHARE_OF_SCREEN * window.innerHeight);

export function TheatreRuler(props: TheatreRulerProps) {
  const { patientCase, construct } = props;
  const [box, { width }] = useSize<HTMLDivElement>();
  const placement = useMemo(() => place(patientCase, construct), [patientCase, construct]);
  const layout = useLayout(patientCase, placement, width, heightPx());
  return (
    <div ref={box} className="theatre-ruler">
      {layout && <Drawing {...props} layout={layout} />}
    </div>
  );
}

function Drawing({ layout, numbers, doing, plannedMm, says }: TheatreRulerProps & { readonly layout: RulerLayout }) {
  const { scale, placement, rulerY } = layout;
  const balloons = spreadBalloons(placement.pins.map((pin) => scale.x(pin.axis[0])));
  return (
    <svg role="img" aria-label={says} width={layout.widthPx} height={rulerY + RULER_PX}>
      <Grid {...alongOf(layout)} />
      <KeepOuts layout={layout} />
      <Bone layout={layout} />
      <Skin layout={layout} />
      <Columns layout={layout} />
      <ImPin layout={layout} />
      {plannedMm !== null && (
        <line
          x1={scale.x(plannedMm)}
          x2={scale.x(plannedMm)}
          y1={layout.balloonY + BALLOON_PX}
          y2={rulerY}
          stroke="var(--ink2)"
          strokeWidth="2"
          strokeDasharray="2 4"
        />
      )}
      {placement.pins.map((pin, i) => (
        <Pin key={numbers[i]} {...{ layout, pin }} number={numbers[i]!} x={balloons[i]!} doing={doing(numbers[i]!)} />
      ))}
      <RulerTicks {...alongOf(layout)} />
    </svg>
  );
}

const RULER_PX = 32;

interface PinProps {
  readonly layout: RulerLayout;
  readonly pin: PlacedPin;
  readonly number: number;
  readonly x: number;
  readonly doing: PinDoing;
}

function Pin({ layout: { scale, placement, balloonY, rulerY }, pin, number, x, doing }: PinProps) {
  const isNow = doing === 'now';
  const colour = isNow ? 'var(--moss)' : 'var(--ink)';
  const line = [pin.tip, pin.end].map((point) => inPlane(point, placement.aboutDeg));
  const path = pathOf(line, scale);
  const [endS, endH] = line[1]!;
  const widthPx = pin.diameterMm * scale.pxPerMm;
  return (
    <g>
      <line
        x1={x}
        y1={balloonY}
        x2={scale.x(endS)}
        y2={scale.y(endH)}
        stroke={colour}
        strokeDasharray={doing === 'next' ? '4 3' : undefined}
      />
      {doing === 'next' ? (
        <NextPin path={path} />
      ) : (
        <Rod path={path} widthPx={widthPx} outline={colour} fill={colour} />
      )}
      <path d={`M${scale.x(pin.axis[0])} ${rulerY - 9}l5 9h-10z`} fill={colour} />
      <circle
        cx={x}
        cy={balloonY}
        r={BALLOON_PX}
        fill={doing === 'next' ? 'var(--paper)' : colour}
        stroke={colour}
        strokeWidth="1.5"
        strokeDasharray={doing === 'next' ? '4 3' : undefined}
      />
      {isNow && <circle cx={x} cy={balloonY} r={BALLOON_PX + 4} fill="none" stroke={colour} strokeWidth="2" />}
      <text
        x={x}
        y={balloonY + 5}
        textAnchor="middle"
        className="pin-number"
        fill={doing === 'next' ? 'var(--ink)' : isNow ? 'var(--onmoss)' : 'var(--paper)'}
      >
        {`P${number}`}
      </text>
    </g>
  );
}

const NextPin = ({ path }: { readonly path: string }) => (
  <path d={path} fill="none" stroke="var(--ink)" strokeWidth="2" strokeDasharray="4 3" />
);
