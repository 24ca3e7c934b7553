/** Invented patients: bring them back as they were, or take them out. Real patients are not touched by either. */
import { loadDemonstration } from '@bonewright/demo';
import type { FastifyInstance } from 'fastify';
import type { Context } from '../context.ts';

export function demonstrationRoutes(app: FastifyInstance, { store, live }: Context): void {
  app.post('/api/demo/reset', async () => {
    await store.removeDemonstration();
    const cases = await loadDemonstration(store);
    live.reset();
    return { cases };
  });

  app.post('/api/empty', async () => {
    const removed = await store.removeDemonstration();
    live.reset();
    return { removed };
  });
}
