/** A paper of the construct in a case, as a PDF: the theatre sheet unless another is asked for. */
import { PAPER_NAMES } from '@bonewright/sheet';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import manifest from '../../package.json' with { type: 'json' };
import { asking } from '../rights/every-route.ts';
import { sheetInThread } from '../sheet/sheet-in-thread.ts';

const text = z.string().max(200);
const MOST_USES = 100;
const body = z.strictObject({
  paper: z.enum(PAPER_NAMES).default('theatre'),
  caseFile: z.unknown(),
  title: z.strictObject({
    patient: text.min(1),
    weighed: text.optional(),
    planned: text.optional(),
    lengthsFrom: text.min(1),
    isDemonstration: z.boolean().optional(),
    size: z.enum(['A4', 'Letter']).optional(),
  }),
  /** What the practice's stock says was used, for the implant record. */
  used: z
    .array(z.strictObject({ as: text.min(1), drawerId: text.min(1), batch: text }))
    .max(MOST_USES)
    .optional(),
});

export function sheetRoutes(app: FastifyInstance): void {
  app
    .withTypeProvider<ZodTypeProvider>()
    .post('/api/sheet', { schema: { body }, ...asking('print papers') }, async (request, reply) => {
      const { paper, caseFile, title, used } = request.body;
      const { version } = manifest;
      const pdf = await sheetInThread({ paper, caseFile, title, used, version, madeAt: new Date().toISOString() });
      return reply.type('application/pdf').header('content-disposition', `inline; filename="${paper}.pdf"`).send(pdf);
    });
}
