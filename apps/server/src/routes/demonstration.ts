/** Invented patients: bring them back as they were, or take them out. Real patients are not touched by either. */
import type { FastifyInstance } from 'fastify';
import type { Context } from '../context.ts';
import { asking } from '../rights/every-route.ts';

export function demonstrationRoutes(app: FastifyInstance, { demonstration }: Context): void {
  app.post('/api/demo/reset', asking('demonstration'), async () => ({ removed: await demonstration.reset() }));

  app.post('/api/empty', asking('demonstration'), async () => {
    const removed = await demonstration.remove();
    await demonstration.decline();
    return { removed };
  });
}
