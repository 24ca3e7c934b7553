/** Syringes and their finest marks. A barrel is read before it is trusted: makes differ. */
import type { Source } from '../../entry.ts';
import type { Syringe } from '../../injection.ts';

const LAY: Source = { title: 'lay page on 0.3 and 1 ml syringes', place: 'weak' };
const BARREL: Source = { title: 'usual barrels, read the marks of your own' };

export const syringes: readonly Syringe[] = Object.freeze([
  { id: '0.3-ml', name: '0.3 ml, fixed needle', capacityMl: 0.3, markMl: 0.01, source: LAY, status: 'seen' },
  { id: '1-ml', name: '1 ml', capacityMl: 1, markMl: 0.01, source: LAY, status: 'seen' },
  { id: '2-ml', name: '2 ml', capacityMl: 2, markMl: 0.1, source: BARREL, status: 'common practice' },
  { id: '5-ml', name: '5 ml', capacityMl: 5, markMl: 0.2, source: BARREL, status: 'common practice' },
  { id: '10-ml', name: '10 ml', capacityMl: 10, markMl: 0.5, source: BARREL, status: 'common practice' },
]);
