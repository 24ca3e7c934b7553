/** The board, and the events of one case. */
import { eventSchema, nextCaseNumber } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Context } from '../context.ts';
import { asking } from '../rights/every-route.ts';

export const LARGEST_BATCH = 500;
const params = z.object({ caseId: z.string() });
/** Events with a higher number than this. */
export const after = z.object({ after: z.coerce.number().int().min(0).default(0) });
const batch = z.strictObject({ events: z.array(eventSchema).min(1).max(LARGEST_BATCH) });

export function caseRoutes(app: FastifyInstance, { store, demonstration }: Context): void {
  const typed = app.withTypeProvider<ZodTypeProvider>();

  typed.get('/api/cases', asking('read cases'), async () => {
    const cases = await store.list();
    const numbers = cases.map(({ number }) => number);
    const nextNumber = nextCaseNumber(numbers, new Date().getFullYear());
    return { cases, nextNumber, preparing: demonstration.isPreparing };
  });

  typed.get(
    '/api/cases/:caseId/events',
    { schema: { params, querystring: after }, ...asking('read cases') },
    async (request, reply) => {
      const events = await store.read(request.params.caseId, request.query.after);
      if (events.length > 0 || request.query.after > 0) return { events };
      return reply
        .code(404)
        .send({ error: 'There is no such case here. It may be on another machine, or not yet sent.' });
    },
  );

  typed.post(
    '/api/cases/:caseId/events',
    { schema: { params, body: batch }, ...asking('record in cases') },
    async (request) => {
      const { events } = request.body;
      if (events.some(({ caseId }) => caseId !== request.params.caseId))
        throw new InputError('an event belongs to another case than the address', 'events', 'send each case by itself');
      return store.append(events);
    },
  );
}
