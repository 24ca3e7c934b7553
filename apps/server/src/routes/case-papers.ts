/** Papers of a case, made from its record alone: nothing that is sent along reaches the paper but its size and the hour. */
import { foldCase } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import { CASE_PAPER_NAMES, CASE_PAPERS } from '@bonewright/sheet';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import manifest from '../../package.json' with { type: 'json' };
import type { Context } from '../context.ts';
import { asking } from '../rights/every-route.ts';

const params = z.object({ caseId: z.string(), paper: z.enum(CASE_PAPER_NAMES) });
const FARTHEST_MINUTES = 15 * 60;
const querystring = z.object({
  size: z.enum(['A4', 'Letter']).default('A4'),
  /** Minutes that the clocks of whoever asks are ahead of UTC. */
  east: z.coerce.number().int().min(-FARTHEST_MINUTES).max(FARTHEST_MINUTES).default(0),
});

export function casePaperRoutes(app: FastifyInstance, { store }: Context): void {
  app
    .withTypeProvider<ZodTypeProvider>()
    .get(
      '/api/cases/:caseId/papers/:paper',
      { schema: { params, querystring }, ...asking('print papers') },
      async (request, reply) => {
        const { caseId, paper } = request.params;
        const { size, east } = request.query;
        const events = await store.read(caseId);
        if (events.length === 0) throw new InputError('there is no such case here', 'caseId', 'open it on the board');
        const pdf = await CASE_PAPERS[paper]({
          state: foldCase(events),
          made: new Date(),
          minutesEastOfUtc: east,
          size,
          version: manifest.version,
        });
        return reply
          .type('application/pdf')
          .header('content-disposition', `inline; filename="${paper}.pdf"`)
          .send(Buffer.from(pdf));
      },
    );
}
