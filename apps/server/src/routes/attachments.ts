/** Files by their hash. They come as plain bytes and go out as plain bytes, never as something a browser would open. */
import { Readable } from 'node:stream';
import { filesNamed, type Subject } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import type { Store } from '@bonewright/store';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Context } from '../context.ts';
import { asking } from '../rights/every-route.ts';
import { askerOf } from '../rights/who-asks.ts';

const LARGEST_BYTES = 200 * 1024 * 1024;
const sending = { bodyLimit: LARGEST_BYTES, ...asking('record in cases') };
const hashed = { schema: { params: z.object({ sha256: z.string().regex(/^[0-9a-f]{64}$/) }) } };

export function attachmentRoutes(app: FastifyInstance, { store }: Context): void {
  const typed = app.withTypeProvider<ZodTypeProvider>();
  app.addContentTypeParser('application/octet-stream', (_request, payload, done) => done(null, payload));

  /** For a page that cannot hash; the answer says the hash. */
  typed.post('/api/attachments', sending, async (request) =>
    store.putAttachment(bytesOf(request.body), { largestBytes: LARGEST_BYTES }),
  );

  typed.put('/api/attachments/:sha256', { ...sending, ...hashed }, async (request) =>
    store.putAttachment(bytesOf(request.body), {
      largestBytes: LARGEST_BYTES,
      expectedSha256: request.params.sha256,
    }),
  );

  typed.get('/api/attachments/:sha256', { ...hashed, ...asking('read cases') }, async (request, reply) => {
    const { sha256 } = request.params;
    const isTheirs = await isOpenTo(askerOf(request), sha256, store);
    const found = isTheirs ? await store.getAttachment(sha256) : null;
    if (!found) return reply.code(404).send({ error: 'There is no such file here.' });
    return reply
      .type('application/octet-stream')
      .header('content-length', found.byteLength)
      .header('content-disposition', 'attachment')
      .header('content-security-policy', "sandbox; default-src 'none'")
      .header('cache-control', 'private, max-age=31536000, immutable')
      .send(found.bytes);
  });
}

function bytesOf(body: unknown): Readable {
  if (body instanceof Readable) return body;
  throw new InputError('a file is sent as its bytes', '', 'use the content type application/octet-stream');
}

/** A file is open to whoever may open a case that rests on it. */
async function isOpenTo({ cases }: Subject, sha256: string, store: Store): Promise<boolean> {
  if (cases === null) return true;
  for (const caseId of cases) {
    const events = await store.read(caseId);
    if (events.flatMap(filesNamed).some((file) => file.sha256 === sha256)) return true;
  }
  return false;
}
