/** How much of the narrowest canal the IM pin fills, beside a frame. */
import { value } from '@bonewright/evidence';
import type { Check } from '../model/plan.ts';
import type { CheckContext } from './context.ts';
import { judged, unmeasured } from './limits.ts';
import { inMm, inPercent } from './words.ts';

export function imFill({ im, case: patientCase }: CheckContext): Check[] {
  if (!im) return [];
  const mostId = im.tiedIn ? 'rule.im-fill.tied.most' : 'rule.im-fill.untied.most';
  if (!patientCase.bone.stations.some(({ canalMm }) => canalMm !== null)) {
    const because = 'The canal is not measured anywhere: no IM pin can be chosen for it.';
    return [unmeasured('im-fill', '%', 'stop', because, [mostId])];
  }
  if (im.narrowestCanalMm <= 0) {
    return [unmeasured('im-fill', '%', 'stop', 'The canal closes along the way: no IM pin goes through it.', [mostId])];
  }
  const percent = (100 * im.drawer.diameterMm) / im.narrowestCanalMm;
  const fills = `The IM pin fills ${inPercent(percent)} of the canal, ${inMm(im.narrowestCanalMm)} at its narrowest`;
  const most = judged({
    id: 'im-fill',
    value: percent,
    unit: '%',
    limits: { worse: 'above', watch: value(mostId), stop: value('rule.im-fill.stop') },
    shown: inPercent,
    says: `${fills}${im.tiedIn ? ', tied in' : ', not tied in'}`,
    evidence: [mostId, 'rule.im-fill.stop'],
  });
  const least = judged({
    id: 'im-fill-least',
    value: percent,
    unit: '%',
    limits: { worse: 'below', watch: value('rule.im-fill.tied.least'), stop: null },
    shown: inPercent,
    says: fills,
    advice: 'It adds little against bending.',
    evidence: ['rule.im-fill.tied.least'],
  });
  return [most, least];
}
