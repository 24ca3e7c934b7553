/** All pins of the ruler in order, each with its balloon; to drag, or only to read. */
import { type Case, type Construct, worstVerdict } from '@bonewright/construct';
import type { KeyboardEvent } from 'react';
import { inPlane } from '../../drawing/geometry/side-profile.ts';
import { movePinTo, tiltPinTo } from '../edit/edits.ts';
import { pinKey } from '../edit/pin-keys.ts';

import { type RulerLayout, spreadBalloons } from './layout.ts';
import { type PinHands, PinMark } from './pin-mark.tsx';
import type { RulerEdit, RulerProps } from './ruler.tsx';
import { pinSays } from './says.ts';

export function Pins(props: RulerProps & { readonly layout: RulerLayout }) {
  const { layout, patientCase, construct, plan, selected, edit } = props;
  const { pins } = layout.placement;
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
      hands={edit && handsOn(edit, patientCase, construct, i)}
    />
  ));
}

function handsOn({ onSelect, change }: RulerEdit, { bone }: Case, construct: Construct, index: number): PinHands {
  return {
    onSelect: () => onSelect(index),
    onMove: (sMm) => change(movePinTo(construct, index, sMm, bone.lengthMm), `move ${index}`),
    onTilt: (deg) => change(tiltPinTo(construct, index, deg), `tilt ${index}`),
    onKey: (event: KeyboardEvent) => {
      const next = pinKey(event, construct, index, bone.lengthMm);
      if (!next) return;
      event.preventDefault();
      change(next.construct, next.stroke);
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
