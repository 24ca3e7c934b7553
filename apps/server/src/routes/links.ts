/** Carers' links: a long random address that opens a carer's own patients and nothing else. */
import { InputError } from '@bonewright/fault';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Context } from '../context.ts';
import { newId, newToken } from '../people/tokens.ts';
import { asking } from '../rights/every-route.ts';
import { personOf } from '../rights/who-asks.ts';
import { idSchema } from './session.ts';

const DAY_MS = 24 * 3600 * 1000;
const LONGEST_DAYS = 90;
const MOST_PATIENTS = 500;
const id = z.object({ id: idSchema });
const making = z.strictObject({ personId: idSchema, days: z.number().int().min(1).max(LONGEST_DAYS) });
const patients = z.strictObject({ cases: z.array(idSchema).max(MOST_PATIENTS) });

export function linkRoutes(app: FastifyInstance, { store, live, people: { log } }: Context): void {
  const typed = app.withTypeProvider<ZodTypeProvider>();
  const { people } = store;
  const giving = asking('give links');
  const carer = async (personId: string) => {
    const person = await people.find(personId);
    if (person?.role === 'carer' && person.isActive) return person;
    throw new InputError('there is no such carer', 'personId', 'make an account with the role carer first');
  };

  typed.get('/api/links', giving, async () => {
    const links = await people.links();
    const carers = (await people.list()).filter(({ role, isActive }) => role === 'carer' && isActive);
    return {
      carers: carers.map(({ id: personId, name, cases }) => ({
        ...{ id: personId, name, cases: cases ?? [] },
        links: links
          .filter((link) => link.personId === personId)
          .map(({ tokenHash: _, personId: __, ...link }) => link),
      })),
    };
  });

  /** The token is said once; only its hash is kept. */
  typed.post('/api/links', { schema: { body: making }, ...giving }, async (request) => {
    const { name: madeBy } = personOf(request);
    const { personId, days } = request.body;
    const person = await carer(personId);
    const { token, tokenHash } = newToken();
    const now = new Date();
    const expiresAt = new Date(now.getTime() + days * DAY_MS).toISOString();
    const link = { id: newId(), tokenHash, personId, madeAt: now.toISOString(), madeBy, expiresAt, takenBackAt: null };
    await people.addLink(link);
    await log.note(request, 'link made', `${person.name}, until ${expiresAt}`);
    return { id: link.id, token, expiresAt };
  });

  typed.delete('/api/links/:id', { schema: { params: id }, ...giving }, async (request, reply) => {
    const isTaken = await people.takeBackLink(request.params.id, new Date().toISOString());
    if (!isTaken) return reply.code(404).send({ error: 'There is no such link, or it was taken back before.' });
    await log.note(request, 'link taken back', request.params.id);
    live.checkHearers();
    return { takenBack: request.params.id };
  });

  typed.put('/api/carers/:id/patients', { schema: { params: id, body: patients }, ...giving }, async (request) => {
    const person = await carer(request.params.id);
    await people.change(person.id, { cases: request.body.cases });
    await log.note(request, 'patients given', `${person.name}: ${request.body.cases.join(', ')}`);
    live.checkHearers();
    return { cases: request.body.cases };
  });
}
