/** What was recorded, as it happens: an event stream that resumes where the page last was. */

import { isDeepStrictEqual } from 'node:util';
import type { Store } from '@bonewright/store';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Sessions } from '../people/sessions.ts';
import { asking } from '../rights/every-route.ts';
import { type Asker, askerOf, COOKIE } from '../rights/who-asks.ts';

const position = z.coerce.number().int().min(0).optional();
const schema = { headers: z.looseObject({ 'last-event-id': position }), querystring: z.object({ after: position }) };

export function liveRoutes(app: FastifyInstance, { live, store, people }: Context): void {
  app
    .withTypeProvider<ZodTypeProvider>()
    .get('/api/events', { schema, ...asking('read cases') }, async (request, reply) => {
      const asker = askerOf(request);
      reply.hijack();
      reply.raw.writeHead(200, {
        'content-type': 'text/event-stream',
        'cache-control': 'no-store',
        'x-content-type-options': 'nosniff',
      });
      await live.listen(reply.raw, request.headers['last-event-id'] ?? request.query.after ?? null, {
        subject: asker,
        isStillThere: () => isStillThere(asker, request.cookies[COOKIE], people.sessions, store),
      });
    });
}

/** With the same session and the same rights as when it began to listen. */
async function isStillThere(
  asker: Asker,
  token: string | undefined,
  sessions: Sessions,
  store: Store,
): Promise<boolean> {
  if (asker.name === null) return !(await store.people.hasAccounts());
  return token !== undefined && isDeepStrictEqual(await sessions.peek(token), asker);
}
