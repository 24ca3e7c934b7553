/** Films that X-ray machines sent: who they wait for, and what became of them. Their bytes are attachments. */
import type { FilmOutcome } from '@bonewright/store';
import type { FastifyInstance, FastifyReply } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Context } from '../context.ts';
import { asking } from '../rights/every-route.ts';

const LONGEST_REASON = 500;
const films = asking('films from machines');
const params = z.object({ sha256: z.string().regex(/^[0-9a-f]{64}$/) });
const match = z.strictObject({ caseId: z.string() });
const setAside = z.strictObject({ reason: z.string().trim().min(1, 'say why').max(LONGEST_REASON) });

export function inboxRoutes(app: FastifyInstance, { store, receiver }: Context): void {
  const typed = app.withTypeProvider<ZodTypeProvider>();
  const settle = async (reply: FastifyReply, sha256: string, outcome: FilmOutcome) => {
    const isSettled = await store.inbox.settle(sha256, outcome);
    if (!isSettled) return reply.code(404).send({ error: 'No such film is waiting: perhaps somebody was first.' });
    return { settled: sha256 };
  };

  typed.get('/api/inbox', films, async () => ({ receiving: receiver.at, films: await store.inbox.waiting() }));

  /** The film itself goes into the case by an event of the case; this only takes it off the list. */
  typed.post('/api/inbox/:sha256/match', { schema: { params, body: match }, ...films }, async (request, reply) =>
    settle(reply, request.params.sha256, { matched: request.body.caseId }),
  );

  typed.delete('/api/inbox/:sha256', { schema: { params, body: setAside }, ...films }, async (request, reply) =>
    settle(reply, request.params.sha256, { setAside: request.body.reason }),
  );
}
