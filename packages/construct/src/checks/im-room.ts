/** Does the IM pin pass beside each fixator pin? Room left in the canal once both are in it. */
import { sectionAt } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import type { Check } from '../model/plan.ts';
import { canalIsMeasuredAt } from './canal-measured.ts';
import type { CheckContext, CheckedPin } from './context.ts';
import { judged, unmeasured } from './limits.ts';
import { inMm, pinName } from './words.ts';

const EVIDENCE = ['rule.im-room.watch'];

export function imRoom(context: CheckContext): Check[] {
  const { im, pins } = context;
  if (!im) return [];
  return pins.map((pin) => {
    const name = pinName(pin.index);
    if (!canalIsMeasuredAt(context, pin.sMm)) {
      const because = `The canal at ${name} is not measured: whether the IM pin passes there is not known.`;
      return unmeasured('im-room', 'mm', 'watch', because, EVIDENCE, pin.index + 1);
    }
    const roomMm = roomBeside(context, pin, im.drawer.diameterMm);
    const passes = `${name} leaves ${inMm(roomMm)} to spare beside the IM pin`;
    return judged({
      id: 'im-room',
      pin: pin.index + 1,
      value: roomMm,
      unit: 'mm',
      limits: { worse: 'below', watch: value('rule.im-room.watch'), stop: 0 },
      shown: inMm,
      says: roomMm < 0 ? `${name} and the IM pin need ${inMm(-roomMm)} more canal than there is` : passes,
      evidence: EVIDENCE,
    });
  });
}

/** The pin runs through the canal's middle; the IM pin is pushed to one side of it, against the wall. */
function roomBeside({ profile }: CheckContext, pin: CheckedPin, imDiameterMm: number): number {
  const [medial, cranial] = sectionAt(profile, pin.sMm).canalMm;
  const angle = (pin.aboutDeg * Math.PI) / 180;
  const across = Math.hypot(medial * Math.sin(angle), cranial * Math.cos(angle)) / 2;
  const along = Math.hypot(medial * Math.cos(angle), cranial * Math.sin(angle)) / 2;
  const beside = across - pin.drawer.diameterMm / 2;
  return Math.min(beside, 2 * along) - imDiameterMm;
}
