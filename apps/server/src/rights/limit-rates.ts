/** No address asks for ever: so many requests a minute, and then it waits. This machine without accounts may. */
import rateLimit from '@fastify/rate-limit';
import type { FastifyInstance } from 'fastify';
import { RefusedError } from '../people/refused.ts';

/** A page with films, live updates and an outbox asks for some tens in its first minute; a practice may share an address. */
const A_MINUTE = 1200;

export async function limitRates(app: FastifyInstance, max = A_MINUTE): Promise<void> {
  await app.register(rateLimit, {
    max,
    timeWindow: '1 minute',
    allowList: (request) => request.asker?.name === null,
    errorResponseBuilder: (_request, { ttl }) =>
      new RefusedError(
        429,
        'Too many requests from this address within a minute. What you typed is kept; it is sent again by itself.',
        new Date(Date.now() + ttl).toISOString(),
      ),
  });
}
