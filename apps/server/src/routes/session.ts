/** Signing in and out, and what a person may change of the own account. */
import { ROLES } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Context } from '../context.ts';
import { makeFirstPerson } from '../people/accounts.ts';
import { requireGoodPassword } from '../people/password.ts';
import { RefusedError } from '../people/refused.ts';
import type { From } from '../people/sessions.ts';
import { whoseIs, whoseLinkIs } from '../people/sign-in.ts';
import { asking } from '../rights/every-route.ts';
import { COOKIE, personOf } from '../rights/who-asks.ts';

const LONGEST = 200;
const passwordSchema = z.string().min(1).max(LONGEST);
export const nameSchema = z
  .string()
  .trim()
  .min(1, 'a name is missing')
  .max(LONGEST)
  .regex(/^\P{Cc}*$/u, 'a name is letters and signs on one line');
export const idSchema = z.string().regex(/^[\w-]{1,64}$/, 'this is no id');
const signIn = z.strictObject({ name: nameSchema, password: passwordSchema });
const first = z.strictObject({ name: nameSchema, role: z.enum(ROLES), password: passwordSchema });
const link = z.strictObject({ token: z.string().min(1).max(LONGEST) });
const choose = z.strictObject({ current: passwordSchema, next: passwordSchema });
const session = z.object({ id: idSchema });

export function sessionRoutes(
  app: FastifyInstance,
  { store, live, people: { sessions, passwords, log } }: Context,
): void {
  const typed = app.withTypeProvider<ZodTypeProvider>();
  const { people } = store;
  const open = asking('anybody');
  const own = asking('own account');

  typed.get('/api/session', open, async ({ asker }) => ({
    accounts: await people.hasAccounts(),
    person: asker && {
      ...{ name: asker.name, role: asker.role, isOwner: asker.isOwner, cases: asker.cases },
      mustChoosePassword: asker.mustChoosePassword,
      isLink: 'isLink' in asker && asker.isLink,
    },
  }));

  typed.post('/api/session', { schema: { body: signIn }, ...open }, async (request, reply) => {
    const { name, password } = request.body;
    const person = await whoseIs(people, passwords, { name, password, address: request.ip }).catch(async (error) => {
      await log.note(
        request,
        error instanceof RefusedError && error.retryAt ? 'told to wait' : 'not signed in',
        '',
        name,
      );
      throw error;
    });
    const { token, expiresAt } = await sessions.start(person, fromOf(request));
    await log.note(request, 'signed in', '', person.name);
    return giveCookie(request, reply, token, expiresAt).send({ name: person.name });
  });

  typed.post('/api/session/link', { schema: { body: link }, ...open }, async (request, reply) => {
    const found = await whoseLinkIs(people, request.body.token, request.ip).catch(async (error) => {
      await log.note(request, 'link refused');
      throw error;
    });
    const { token, expiresAt } = await sessions.start(found.person, fromOf(request), found.link);
    await log.note(request, 'came by link', '', found.person.name);
    return giveCookie(request, reply, token, expiresAt).send({ name: found.person.name });
  });

  typed.delete('/api/session', own, async (request, reply) => {
    const { personId, sessionId } = personOf(request);
    await people.endSessions(personId, { only: sessionId });
    await log.note(request, 'signed out');
    live.checkHearers();
    return reply.clearCookie(COOKIE, { path: '/' }).send({ ended: 1 });
  });

  /** Accounts begin here: at this machine, while there are none. */
  typed.post('/api/session/first', { schema: { body: first }, ...asking('manage people') }, async (request, reply) => {
    if (await people.hasAccounts()) throw new RefusedError(403, 'There are accounts already. Sign in.');
    requireGoodPassword(request.body.password, request.body.name);
    const person = await makeFirstPerson(people, passwords, request.body);
    await log.note(request, 'first owner made', person.name);
    live.checkHearers();
    const { token, expiresAt } = await sessions.start(person, fromOf(request));
    return giveCookie(request, reply, token, expiresAt).send({ name: person.name });
  });

  typed.put('/api/account/password', { schema: { body: choose }, ...own }, async (request) => {
    const { name, personId, sessionId, isLink } = personOf(request);
    if (isLink) throw new RefusedError(403, 'You came by a link; it has no password.');
    const { current, next } = request.body;
    await whoseIs(people, passwords, { name, password: current, address: request.ip });
    requireGoodPassword(next, name);
    if (next === current) throw new InputError('the password is the old one', 'next', 'take another');
    await people.change(personId, { password: await passwords.hash(next), temporaryUntil: null });
    const ended = await people.endSessions(personId, { butNot: sessionId });
    await log.note(request, 'password chosen');
    return { ended };
  });

  typed.get('/api/account/sessions', own, async (request) => {
    const { personId, sessionId } = personOf(request);
    const all = await people.sessionsOf(personId);
    return {
      sessions: all.map(({ id, startedAt, seenAt, address, device, linkId }) => ({
        ...{ id, startedAt, seenAt, address, device, isLink: linkId !== null, isThis: id === sessionId },
      })),
    };
  });

  typed.delete('/api/account/sessions/:id', { schema: { params: session }, ...own }, async (request) => {
    const ended = await people.endSessions(personOf(request).personId, { only: request.params.id });
    await log.note(request, 'session ended');
    live.checkHearers();
    return { ended };
  });

  /** Everywhere but here. */
  typed.delete('/api/account/sessions', own, async (request) => {
    const { personId, sessionId } = personOf(request);
    const ended = await people.endSessions(personId, { butNot: sessionId });
    await log.note(request, 'signed out everywhere else');
    live.checkHearers();
    return { ended };
  });
}

function fromOf(request: FastifyRequest): From {
  return { address: request.ip, device: request.headers['user-agent'] ?? '' };
}

function giveCookie(request: FastifyRequest, reply: FastifyReply, token: string, expiresAt: string): FastifyReply {
  return reply.setCookie(COOKIE, token, {
    ...{ path: '/', httpOnly: true, sameSite: 'strict', secure: request.protocol === 'https' },
    expires: new Date(expiresAt),
  });
}
