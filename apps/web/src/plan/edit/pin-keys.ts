/** Keys on a pin: arrows move and turn it, with Alt they tilt it, Delete takes it out. Shift makes each step finer. */
import type { Construct } from '@bonewright/construct';
import { movePinTo, removePin, tiltPinTo, turnPinTo } from './edits.ts';

interface Key {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
}

const STEP_MM = 0.5;
const FINE_MM = 0.1;
const TURN_DEG = 5;
const FINE_DEG = 1;

export interface KeyedChange {
  readonly construct: Construct;
  readonly stroke: string;
}

/** The construct after the key, or null where the key means nothing here. */
export function pinKey(event: Key, construct: Construct, index: number, lengthMm: number): KeyedChange | null {
  const pin = construct.pins[index];
  if (!pin || event.ctrlKey || event.metaKey) return null;
  const mm = event.shiftKey ? FINE_MM : STEP_MM;
  const deg = event.shiftKey ? FINE_DEG : TURN_DEG;
  const move = (by: number) => ({
    construct: movePinTo(construct, index, pin.sMm + by, lengthMm),
    stroke: `move ${index}`,
  });
  const tilt = (by: number) => ({ construct: tiltPinTo(construct, index, pin.tiltDeg + by), stroke: `tilt ${index}` });
  const turn = (by: number) => ({
    construct: turnPinTo(construct, index, pin.aboutDeg + by),
    stroke: `turn ${index}`,
  });
  switch (event.key) {
    case 'ArrowLeft':
      return event.altKey ? tilt(-deg) : move(-mm);
    case 'ArrowRight':
      return event.altKey ? tilt(deg) : move(mm);
    case 'ArrowUp':
      return turn(deg);
    case 'ArrowDown':
      return turn(-deg);
    case 'Delete':
    case 'Backspace':
      return { construct: removePin(construct, index), stroke: `remove ${construct.pins.length}` };
    default:
      return null;
  }
}
