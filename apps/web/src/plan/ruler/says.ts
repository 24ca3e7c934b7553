/** What a screen reader hears of a pin and of a change. */
import { type Case, type Construct, directionWords, type Plan } from '@bonewright/construct';
import { worstMargin } from '../margins/worst.ts';
import { figure, tiltWords } from '../words.ts';

export function pinSays({ drawer }: Case, construct: Construct, plan: Plan | null, index: number): string {
  const pin = construct.pins[index];
  if (!pin) return '';
  const size = drawer.pins.find(({ id }) => id === pin.drawerId)?.diameterMm;
  const concerns = (plan?.checks ?? []).filter((check) => check.pin === index + 1 && check.verdict !== 'good');
  return [
    `${figure(pin.sMm)} millimetres`,
    size ? `${figure(size, 2)} millimetre pin` : 'a pin that is no longer in the drawer',
    directionWords(pin.aboutDeg),
    tiltWords(pin.tiltDeg),
    ...concerns.map(({ verdict, because }) => `${verdict}: ${because.replace(/\.$/, '')}`),
  ].join(', ');
}

/** `P3 33.5 millimetres, worst margin 1.26, watch`. */
export function resultSays(construct: Construct, plan: Plan, selected: number): string {
  const pin = construct.pins[selected];
  const worst = worstMargin(plan);
  const where = pin ? `P${selected + 1} ${figure(pin.sMm)} millimetres, ` : '';
  return `${where}worst margin ${figure(worst.margin.p05, 2)}, ${worst.verdict}; whole plan ${plan.verdict}`;
}
