/** A case as a file for another practice, and such a file brought in. */
import { Readable } from 'node:stream';
import { InputError } from '@bonewright/fault';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Context } from '../context.ts';
import { readBundle } from '../exchange/read-bundle.ts';
import { writeBundle } from '../exchange/write-bundle.ts';
import { asking } from '../rights/every-route.ts';

const LARGEST_BYTES = 200 * 1024 * 1024;
const params = z.object({ caseId: z.string() });

export function copyRoutes(app: FastifyInstance, { store, people: { log } }: Context): void {
  const typed = app.withTypeProvider<ZodTypeProvider>();

  typed.get('/api/cases/:caseId/copy', { schema: { params }, ...asking('take copies') }, async (request, reply) => {
    const { caseId } = request.params;
    const bundle = await writeBundle(store, caseId, new Date());
    await log.noteOpened(request, caseId);
    return reply
      .type('application/zip')
      .header('content-disposition', 'attachment; filename="case.zip"')
      .send(Readable.from(bundle));
  });

  typed.post('/api/copies', { bodyLimit: LARGEST_BYTES, ...asking('bring in cases') }, async (request) =>
    readBundle(store, await wholeOf(request.body)),
  );
}

async function wholeOf(body: unknown): Promise<Uint8Array> {
  if (!(body instanceof Readable))
    throw new InputError('a copy is sent as its bytes', '', 'use the content type application/octet-stream');
  const chunks: Buffer[] = [];
  let byteLength = 0;
  for await (const chunk of body) {
    byteLength += chunk.length;
    if (byteLength > LARGEST_BYTES)
      throw new InputError(`the copy is larger than ${LARGEST_BYTES} bytes`, '', 'leave films out of it');
    chunks.push(chunk);
  }
  return new Uint8Array(Buffer.concat(chunks));
}
