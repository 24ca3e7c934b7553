/** Files over all cases: the calendar of looks, the table of outcomes. */
import { type CaseState, foldCase } from '@bonewright/casebook';
import type { FastifyInstance } from 'fastify';
import type { Context } from '../context.ts';
import { asking } from '../rights/every-route.ts';
import { calendarOf } from '../series/calendar.ts';
import { outcomesOf } from '../series/outcomes.ts';

export function seriesRoutes(app: FastifyInstance, { store }: Context): void {
  const states = async (): Promise<CaseState[]> => {
    const rows = await store.list();
    return Promise.all(rows.map(async ({ caseId }) => foldCase(await store.read(caseId))));
  };

  app.get('/api/calendar.ics', asking('read the calendar'), async (_, reply) =>
    reply
      .type('text/calendar; charset=utf-8')
      .header('content-disposition', 'attachment; filename="looks.ics"')
      .send(calendarOf(await states(), new Date())),
  );

  app.get('/api/outcomes.csv', asking('read outcomes'), async (_, reply) =>
    reply
      .type('text/csv; charset=utf-8; header=present')
      .header('content-disposition', 'attachment; filename="outcomes.csv"')
      .send(outcomesOf(await states())),
  );
}
