/** The practice's own record: what it keeps once and not in a case. */
import { practiceEventSchema, practiceRefusalOf } from '@bonewright/casebook';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Context } from '../context.ts';
import { RefusedError } from '../people/refused.ts';
import { asking } from '../rights/every-route.ts';
import { askerOf } from '../rights/who-asks.ts';
import { after, LARGEST_BATCH } from './cases.ts';

const batch = z.strictObject({ events: z.array(practiceEventSchema).min(1).max(LARGEST_BATCH) });

export function practiceRoutes(app: FastifyInstance, { store, live }: Context): void {
  const typed = app.withTypeProvider<ZodTypeProvider>();

  typed.get(
    '/api/practice/events',
    { schema: { querystring: after }, ...asking('read the practice') },
    async (request) => ({
      events: await store.practice.read(request.query.after),
    }),
  );

  typed.post(
    '/api/practice/events',
    { schema: { body: batch }, ...asking('record in the practice') },
    async (request) => {
      for (const event of request.body.events) {
        const because = practiceRefusalOf(askerOf(request), event);
        if (because !== null) throw new RefusedError(403, because);
      }
      const appended = await store.practice.append(request.body.events);
      if (appended.added > 0) live.changed();
      return appended;
    },
  );
}
