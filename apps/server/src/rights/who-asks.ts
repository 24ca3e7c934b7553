/** Every request: by a name of ours, from a page of ours, by somebody who holds the route's right. Refused before a body is read. */
import { holds, RIGHTS, type Right, type Subject, THIS_MACHINE } from '@bonewright/casebook';
import type { PeopleStore } from '@bonewright/store';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { AccessLog } from '../people/access-log.ts';
import { RefusedError } from '../people/refused.ts';
import type { Sessions, SignedIn } from '../people/sessions.ts';
import { hostOf, isAskedHere, isOwnName } from '../people/this-machine.ts';

/** Somebody signed in, or this machine while there are no accounts. */
export type Asker = SignedIn | (Subject & { readonly name: null });

declare module 'fastify' {
  interface FastifyRequest {
    /** Null: nobody is signed in. */
    asker: Asker | null;
  }
}

export const COOKIE = 'bonewright_session';
/** A page of another site cannot send it without asking first, and is never allowed to. */
const PAGE_HEADER = 'x-bonewright';

interface Gate {
  readonly people: PeopleStore;
  readonly sessions: Sessions;
  readonly log: AccessLog;
  /** Names of this server beside its addresses. */
  readonly names: readonly string[];
}

export function askWho(app: FastifyInstance, gate: Gate): void {
  app.decorateRequest('asker', null);
  app.addHook('onRequest', async (request) => {
    request.asker = await whoAsks(request, gate);
    requireOwnName(request, gate.names);
    requireOwnPage(request);
    const { right } = request.routeOptions.config;
    if (right !== undefined && !holds(request.asker, right)) await refuse(request, right, gate.log);
  });
}

/** The person of a route that only somebody signed in with an account can use. Throws RefusedError for anybody else. */
export function personOf({ asker }: FastifyRequest): SignedIn {
  if (asker && 'personId' in asker) return asker;
  throw new RefusedError(403, 'There are no accounts here yet, so there is nothing of your own to change.');
}

/** Whoever asks, on a route that names a right. */
export function askerOf({ asker }: FastifyRequest): Asker {
  if (asker) return asker;
  throw new RefusedError(401, 'Sign in first.');
}

async function whoAsks(request: FastifyRequest, { people, sessions }: Gate): Promise<Asker | null> {
  const token = request.cookies[COOKIE];
  const signedIn = token ? await sessions.find(token) : null;
  if (signedIn) return signedIn;
  if (!isAskedHere(request) || (await people.hasAccounts())) return null;
  return { ...THIS_MACHINE, name: null };
}

function requireOwnName(request: FastifyRequest, names: readonly string[]): void {
  if (isOwnName(request, names)) return;
  throw new RefusedError(
    421,
    `This server does not go by the name ${hostOf(request)}. Use its address, or start it with --name ${hostOf(request)}.`,
  );
}

function requireOwnPage(request: FastifyRequest): void {
  const { origin, host, 'sec-fetch-site': site } = request.headers;
  const isReading = request.method === 'GET' || request.method === 'HEAD';
  const isApi = request.url.startsWith('/api/');
  if (isApi && (site === 'cross-site' || site === 'same-site')) refuseOtherPage('another site');
  if (isReading) return;
  if (origin !== undefined && originHost(origin) !== host) refuseOtherPage(origin);
  if (request.asker?.name && request.headers[PAGE_HEADER] === undefined) refuseOtherPage('somewhere else');
}

function refuseOtherPage(whose: string): never {
  throw new RefusedError(403, `A page of ${whose} asked. Use the pages of this server.`);
}

function originHost(origin: string): string {
  return URL.canParse(origin) ? new URL(origin).host : '';
}

async function refuse(request: FastifyRequest, right: Right, log: AccessLog): Promise<never> {
  const { asker } = request;
  if (!asker) throw new RefusedError(401, 'Sign in first. What you typed is kept on this device meanwhile.');
  await log.note(request, 'refused', `${request.method} ${request.url}`);
  if (asker.mustChoosePassword) throw new RefusedError(403, 'Choose a password of your own first.');
  throw new RefusedError(403, `${capital(RIGHTS[right].means)}: that is not for a ${asker.role}. Ask an owner.`);
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
