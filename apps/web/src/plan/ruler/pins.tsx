/** All pins of the ruler in order, each with its balloon; to drag, or only to read. */
import { type Construct, worstVerdict } from '@bonewright/construct';
import { type KeyboardEvent, useMemo, useRef } from 'react';
import { inPlane } from '../../drawing/geometry/side-profile.ts';
import { movePinTo, tiltPinTo } from '../edit/edits.ts';
import { pinKey } from '../edit/pin-keys.ts';
import { type RulerLayout, spreadBalloons } from './layout.ts';
import { type PinHands, PinMark } from './pin-mark.tsx';
import type { RulerProps } from './ruler.tsx';
import { pinSays } from './says.ts';

export function Pins(props: RulerProps & { readonly layout: RulerLayout }) {
  const { layout, patientCase, construct, plan, selected, edit } = props;
  const { pins } = layout.placement;
  const now = useRef({ edit, patientCase, construct });
  now.current = { edit, patientCase, construct };
  const count = pins.length;
  /** The same hands for as long as there are as many pins: a pin that stays is not drawn again. */
  const hands = useMemo(() => Array.from({ length: count }, (_, i) => handsOn(now, i)), [count]);
  const balloons = spreadBalloons(pins.map((_, i) => balloonX(layout, i)));
  return pins.map((pin, i) => (
    <PinMark
      key={i}
      layout={layout}
      pin={pin}
      number={i + 1}
      balloonX={balloons[i]!}
      isSelected={edit !== null && i === selected}
      worst={worstVerdict((plan?.checks ?? []).filter((check) => check.pin === i + 1).map(({ verdict }) => verdict))}
      says={pinSays(patientCase, construct, plan, i)}
      hands={edit && hands[i]!}
    />
  ));
}

interface Now {
  readonly current: Pick<RulerProps, 'edit' | 'patientCase' | 'construct'>;
}

function handsOn(now: Now, index: number): PinHands {
  const change = (stroke: string, edit: (construct: Construct, lengthMm: number) => Construct) => {
    const { edit: hands, construct, patientCase } = now.current;
    hands?.change(edit(construct, patientCase.bone.lengthMm), `${stroke} ${index}`);
  };
  return {
    onSelect: () => now.current.edit?.onSelect(index),
    onMove: (sMm) => change('move', (construct, lengthMm) => movePinTo(construct, index, sMm, lengthMm)),
    onTilt: (deg) => change('tilt', (construct) => tiltPinTo(construct, index, deg)),
    onKey: (event: KeyboardEvent) => {
      const { edit, construct, patientCase } = now.current;
      const next = pinKey(event, construct, index, patientCase.bone.lengthMm);
      if (!next) return;
      event.preventDefault();
      edit?.change(next.construct, next.stroke);
    },
  };
}

/** The balloon stands on the pin's own line, at balloon height. */
function balloonX({ scale, balloonY, placement }: RulerLayout, index: number): number {
  const pin = placement.pins[index]!;
  const [axisS, axisH] = inPlane(pin.axis, placement.aboutDeg);
  const [endS, endH] = inPlane(pin.end, placement.aboutDeg);
  const lean = (endS - axisS) / Math.max(1, endH - axisH);
  return scale.x(axisS) + lean * (scale.y(axisH) - balloonY);
}
