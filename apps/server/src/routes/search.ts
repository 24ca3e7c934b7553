/** Search over everything that was recorded. */
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Context } from '../context.ts';
import { asking } from '../rights/every-route.ts';
import { askerOf } from '../rights/who-asks.ts';

const MOST = 20;
const querystring = z.object({ q: z.string().max(500, 'ask for less at once') });

export function searchRoutes(app: FastifyInstance, { store }: Context): void {
  app
    .withTypeProvider<ZodTypeProvider>()
    .get('/api/search', { schema: { querystring }, ...asking('read cases') }, async (request) => ({
      found: await store.search(request.query.q, MOST, askerOf(request).cases),
    }));
}
