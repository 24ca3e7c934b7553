/** One pin on the ruler: a mark to drag, to turn and to tilt, by hand and by keys. */
import type { Verdict } from '@bonewright/construct';
import { type KeyboardEvent, memo, type ReactNode } from 'react';
import type { PlacedPin } from '../../drawing/geometry/placement.ts';
import { inPlane } from '../../drawing/geometry/side-profile.ts';
import { Rod } from '../../drawing/rod.tsx';
import { isSameScale, pathOf } from '../../drawing/scale.ts';
import { VerdictShape } from '../../drawing/verdict-mark.tsx';
import { BALLOON_PX, type RulerLayout } from './layout.ts';
import { type DragHandlers, useDrag } from './use-drag.ts';

/** The box of a verdict's mark. */
const MARK_PX = 16;

export interface PinHands {
  readonly onSelect: () => void;
  readonly onKey: (event: KeyboardEvent) => void;
  readonly onMove: (sMm: number) => void;
  readonly onTilt: (tiltDeg: number) => void;
}

export interface PinMarkProps {
  readonly layout: RulerLayout;
  readonly pin: PlacedPin;
  readonly number: number;
  readonly balloonX: number;
  readonly isSelected: boolean;
  readonly worst: Verdict;
  /** What a screen reader says of it. */
  readonly says: string;
  readonly hands: PinHands | null;
}

interface DrawnPinProps extends PinMarkProps {
  readonly colour: string;
}

export const PinMark = memo((props: PinMarkProps) => {
  const drawn = { ...props, colour: props.isSelected ? 'var(--moss)' : 'var(--ink)' };
  return props.hands ? <HeldPin {...drawn} hands={props.hands} /> : <DrawnPin {...drawn} />;
}, isSamePin);

/** A pin that stands where it stood is not drawn again, though the layout is a new one. */
function isSamePin(
  { layout: a, pin: pinA, ...restA }: PinMarkProps,
  { layout: b, pin: pinB, ...restB }: PinMarkProps,
): boolean {
  return (
    isSameScale(a.scale, b.scale) &&
    a.placement.aboutDeg === b.placement.aboutDeg &&
    a.rulerY === b.rulerY &&
    a.balloonY === b.balloonY &&
    JSON.stringify(pinA) === JSON.stringify(pinB) &&
    (Object.keys(restA) as (keyof typeof restA)[]).every((key) => restA[key] === restB[key])
  );
}

function DrawnPin(props: DrawnPinProps) {
  return (
    <g>
      <title>{`P${props.number}: ${props.says}`}</title>
      <Shaft {...props} />
      <Balloon {...props} />
      <Concern {...props} />
    </g>
  );
}

function HeldPin(props: DrawnPinProps & { readonly hands: PinHands }) {
  const { layout, pin, number, isSelected, says, hands } = props;
  const along = useDragAlong(props);
  const tilt = useDragTilt(props);
  return (
    <g
      role="slider"
      tabIndex={0}
      aria-label={`P${number}`}
      aria-valuemin={0}
      aria-valuemax={layout.lengthMm}
      aria-valuenow={pin.axis[0]}
      aria-valuetext={says}
      aria-orientation="horizontal"
      data-pin={number - 1}
      className="pin-mark"
      onFocus={hands.onSelect}
      onKeyDown={hands.onKey}
    >
      <g {...along} className="pin-grip">
        <Shaft {...props} />
      </g>
      <g {...(isSelected ? tilt : along)} className={isSelected ? 'pin-tilt' : 'pin-grip'}>
        <Balloon {...props} />
      </g>
      <Concern {...props} />
    </g>
  );
}

function Shaft({ layout, pin, colour, isSelected, worst }: DrawnPinProps): ReactNode {
  const { scale, placement, rulerY } = layout;
  const path = pathOf(
    [pin.tip, pin.end].map((point) => inPlane(point, placement.aboutDeg)),
    scale,
  );
  return (
    <>
      <path d={path} stroke="transparent" strokeWidth="28" fill="none" />
      <Rod
        path={path}
        widthPx={pin.diameterMm * scale.pxPerMm}
        outline={colour}
        fill={isSelected ? colour : 'var(--leaf)'}
      />
      {worst === 'good' && <path d={`M${scale.x(pin.axis[0])} ${rulerY - 9}l5 9h-10z`} fill={colour} />}
    </>
  );
}

function Balloon({ layout, pin, number, balloonX, isSelected, colour }: DrawnPinProps) {
  const [endS, endH] = inPlane(pin.end, layout.placement.aboutDeg);
  const { scale, balloonY } = layout;
  const centre = { cx: balloonX, cy: balloonY };
  return (
    <>
      <line x1={balloonX} y1={balloonY} x2={scale.x(endS)} y2={scale.y(endH)} stroke={colour} />
      <circle {...centre} r={BALLOON_PX + 8} fill="transparent" />
      <circle {...centre} r={BALLOON_PX} fill={isSelected ? colour : 'var(--leaf)'} stroke={colour} strokeWidth="1.5" />
      {isSelected && <circle {...centre} r={BALLOON_PX + 4} fill="none" stroke={colour} strokeWidth="2" />}
      <circle {...centre} r={BALLOON_PX + 8} className="pin-focus" />
      <text
        x={balloonX}
        y={balloonY + 5}
        textAnchor="middle"
        className="pin-number"
        fill={isSelected ? 'var(--onmoss)' : 'var(--ink)'}
      >
        {`P${number}`}
      </text>
    </>
  );
}

/** A pin that a check watches or stops stands on that verdict's mark. */
function Concern({ worst, pin, layout: { scale, rulerY } }: DrawnPinProps) {
  if (worst === 'good') return null;
  return (
    <g transform={`translate(${scale.x(pin.axis[0]) - MARK_PX / 2} ${rulerY - MARK_PX + 1})`}>
      <circle cx="8" cy="8" r="8" fill="var(--paper)" />
      <VerdictShape verdict={worst} />
    </g>
  );
}

/** Along the bone: the pin keeps the distance from the hand that it had when it was taken. */
function useDragAlong({ layout: { scale }, pin, hands }: PinMarkProps): DragHandlers {
  return useDrag(
    () => {
      hands?.onSelect();
      return pin.axis[0];
    },
    (startMm, rightPx) => hands?.onMove(startMm + rightPx / scale.pxPerMm),
  );
}

/** The outer end leans where the hand goes, the place on the bone stays. */
function useDragTilt({ layout: { scale, placement, balloonY }, pin, hands }: PinMarkProps): DragHandlers {
  const [axisS, axisH] = inPlane(pin.axis, placement.aboutDeg);
  const [endS, endH] = inPlane(pin.end, placement.aboutDeg);
  const risePx = scale.y(axisH) - balloonY;
  return useDrag(
    () => ((endS - axisS) / Math.max(1, endH - axisH)) * risePx,
    (leanPx, rightPx) => hands?.onTilt((Math.atan2(leanPx + rightPx, risePx) * 180) / Math.PI),
  );
}
