/** Who there is, and what an owner may change of others. Passwords are handed over once and never shown again. */
import { ROLES } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import type { PersonChange } from '@bonewright/store';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Context } from '../context.ts';
import { handOverPassword, makePerson } from '../people/accounts.ts';
import { asking } from '../rights/every-route.ts';
import { personOf } from '../rights/who-asks.ts';
import { idSchema, nameSchema } from './session.ts';

const id = z.object({ id: idSchema });
const making = z.strictObject({ name: nameSchema, role: z.enum(ROLES), isOwner: z.boolean().default(false) });
const changing = z
  .strictObject({ role: z.enum(ROLES), isOwner: z.boolean(), isActive: z.boolean() })
  .partial()
  .refine((change) => Object.keys(change).length > 0, 'a change changes at least one thing');
const page = z.object({
  before: z
    .string()
    .regex(/^[\w.:-]+$/)
    .optional(),
});
const LOG_PAGE = 100;

export function peopleRoutes(app: FastifyInstance, { store, live, people: { passwords, log } }: Context): void {
  const typed = app.withTypeProvider<ZodTypeProvider>();
  const { people } = store;
  const managing = asking('manage people');
  const named = async (personId: string): Promise<string> => (await people.find(personId))?.name ?? '';

  typed.get('/api/people', managing, async () => ({
    people: (await people.list()).map(({ password, ...person }) => ({ ...person, hasPassword: password !== null })),
  }));

  typed.post('/api/people', { schema: { body: making }, ...managing }, async (request) => {
    personOf(request);
    const { person, password } = await makePerson(people, passwords, request.body);
    await log.note(request, 'person made', `${person.name}, ${person.role}${person.isOwner ? ', owner' : ''}`);
    return { id: person.id, password, temporaryUntil: person.temporaryUntil };
  });

  typed.patch('/api/people/:id', { schema: { params: id, body: changing }, ...managing }, async (request) => {
    const { role, isOwner, isActive } = request.body;
    const change: PersonChange = {
      ...(role !== undefined && { role, cases: role === 'carer' ? [] : null }),
      ...(isOwner !== undefined && { isOwner }),
      ...(isActive !== undefined && { isActive }),
    };
    await people.change(request.params.id, change);
    if (isActive === false) await people.endSessions(request.params.id, { butNot: null });
    await log.note(request, 'person changed', `${await named(request.params.id)}: ${words(request.body)}`);
    live.checkHearers();
    return { id: request.params.id };
  });

  typed.post('/api/people/:id/password', { schema: { params: id }, ...managing }, async (request) => {
    if (personOf(request).personId === request.params.id)
      throw new InputError('this is your own account', 'id', 'change your password on your own page');
    const password = await handOverPassword(people, passwords, request.params.id);
    await log.note(request, 'new password handed over', await named(request.params.id));
    live.checkHearers();
    return { password };
  });

  typed.delete('/api/people/:id/sessions', { schema: { params: id }, ...managing }, async (request) => {
    const ended = await people.endSessions(request.params.id, { butNot: null });
    await log.note(request, 'signed out by an owner', await named(request.params.id));
    live.checkHearers();
    return { ended };
  });

  typed.get('/api/log', { schema: { querystring: page }, ...asking('read the log') }, async (request) => ({
    entries: await people.log(LOG_PAGE, request.query.before ?? null),
  }));
}

const words = (change: object): string =>
  Object.entries(change)
    .map(([key, value]) => `${key} ${value}`)
    .join(', ');
