/** Does the drawer hold as many as the construct takes? */
import type { Check } from '../model/plan.ts';
import type { CheckContext } from './context.ts';
import { judged } from './limits.ts';

export function drawerStock({ pins, im }: CheckContext): Check[] {
  const taken = new Map<string, { count: number; stock: number; name: string }>();
  const take = (id: string, stock: number, name: string) => {
    const before = taken.get(id);
    taken.set(id, { count: (before?.count ?? 0) + 1, stock, name });
  };
  for (const { drawer } of pins) take(`pin ${drawer.id}`, drawer.count, `${drawer.diameterMm} mm pins`);
  if (im) take(`im ${im.drawer.id}`, im.drawer.count, `${im.drawer.diameterMm} mm IM pins`);
  const tightest = [...taken.values()].reduce((a, b) => (b.count - b.stock > a.count - a.stock ? b : a));
  const missing = Math.max(0, tightest.count - tightest.stock);
  return [
    judged({
      id: 'drawer-stock',
      value: missing,
      unit: 'missing',
      limits: { worse: 'above', watch: null, stop: 0 },
      shown: String,
      says:
        missing > 0
          ? `It takes ${tightest.count} of the ${tightest.name} and the drawer holds ${tightest.stock}`
          : 'The drawer holds all it takes',
      evidence: [],
    }),
  ];
}
