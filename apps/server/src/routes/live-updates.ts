/** What was recorded, as it happens: an event stream that resumes where the page last was. */
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Context } from '../context.ts';
import { asking } from '../rights/every-route.ts';

const position = z.coerce.number().int().min(0).optional();
const schema = { headers: z.looseObject({ 'last-event-id': position }), querystring: z.object({ after: position }) };

export function liveRoutes(app: FastifyInstance, { live }: Context): void {
  app
    .withTypeProvider<ZodTypeProvider>()
    .get('/api/events', { schema, ...asking('read cases') }, async (request, reply) => {
      reply.hijack();
      reply.raw.writeHead(200, {
        'content-type': 'text/event-stream',
        'cache-control': 'no-store',
        'x-content-type-options': 'nosniff',
      });
      await live.listen(reply.raw, request.headers['last-event-id'] ?? request.query.after ?? null);
    });
}
