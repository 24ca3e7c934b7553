/** The board, and the events of one case. */
import { type CaseEvent, eventSchema, mayOpen, nextCaseNumber, refusalOf, yearOfNumbers } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { AccessLog } from '../people/access-log.ts';
import { RefusedError } from '../people/refused.ts';
import { asking } from '../rights/every-route.ts';
import { askerOf } from '../rights/who-asks.ts';

const BOARD_PAGE = 100;
const page = z.object({
  ended: z.enum(['yes', 'no']).default('no'),
  before: z.coerce.number().int().positive().optional(),
});
export const LARGEST_BATCH = 500;
const params = z.object({ caseId: z.string() });
/** Events with a higher number than this. */
export const after = z.object({ after: z.coerce.number().int().min(0).default(0) });
const batch = z.strictObject({ events: z.array(eventSchema).min(1).max(LARGEST_BATCH) });

export function caseRoutes(app: FastifyInstance, { store, demonstration, people: { log } }: Context): void {
  const typed = app.withTypeProvider<ZodTypeProvider>();

  typed.get('/api/cases', { schema: { querystring: page }, ...asking('read cases') }, async (request) => {
    const { ended, before = null } = request.query;
    const wanted = { ended: ended === 'yes', before, limit: BOARD_PAGE, only: askerOf(request).cases };
    const { rows: cases, ...page } = await store.board(wanted);
    const year = new Date().getFullYear();
    const nextNumber = nextCaseNumber(await store.numbersBeginning(yearOfNumbers(year)), year);
    return { cases, ...page, nextNumber, preparing: demonstration.isPreparing };
  });

  typed.get(
    '/api/cases/:caseId/events',
    { schema: { params, querystring: after }, ...asking('read cases') },
    async (request, reply) => {
      const { caseId } = request.params;
      const { after: from } = request.query;
      const asker = askerOf(request);
      const isTheirs = mayOpen(asker, caseId);
      const events = isTheirs ? await store.readText(caseId, from) : [];
      if (events.length > 0) await log.noteOpened(request, caseId);
      // A case may hold hundreds of traces: the stored text goes out as it is.
      if (events.length > 0 || (from > 0 && isTheirs))
        return reply.type('application/json; charset=utf-8').send(`{"events":[${events.join(',')}]}`);
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
      await requireOwnToRecord(request, events, log);
      return store.append(events);
    },
  );
}

async function requireOwnToRecord(
  request: FastifyRequest,
  events: readonly CaseEvent[],
  log: AccessLog,
): Promise<void> {
  const asker = askerOf(request);
  for (const event of events) {
    const because = refusalOf(asker, event);
    if (because === null) continue;
    await log.note(request, 'refused', `${event.kind} in ${event.caseId}`);
    throw new RefusedError(403, because);
  }
}
