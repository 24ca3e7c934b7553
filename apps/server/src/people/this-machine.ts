/** What counts as this machine, and by which names it may be asked: a name that only points here (DNS rebinding) is none. */
import { isIP } from 'node:net';
import { hostname } from 'node:os';
import type { FastifyRequest } from 'fastify';

/** 127.0.0.0/8, ::1 and localhost: nobody else can reach it. */
export function isLoopback(host: string): boolean {
  const plain = host.replace(/^\[|\]$/g, '').replace(/^::ffff:/i, '');
  return plain.toLowerCase() === 'localhost' || plain === '::1' || (isIP(plain) === 4 && plain.startsWith('127.'));
}

/** Asked at this machine itself, by one of its own names, and not on behalf of somebody behind a proxy. */
export function isAskedHere(request: FastifyRequest): boolean {
  const { headers, socket } = request;
  const isPassedOn = headers['x-forwarded-for'] ?? headers.forwarded ?? headers['x-real-ip'] ?? headers.via;
  return isPassedOn === undefined && isLoopback(socket.remoteAddress ?? '') && isLoopback(hostOf(request));
}

/** Names under which the pages may be asked for: addresses, this machine's name, and those that were given. */
export function isOwnName(request: FastifyRequest, given: readonly string[]): boolean {
  const host = hostOf(request);
  const bare = host.replace(/^\[|\]$/g, '');
  const own = hostname().toLowerCase();
  return isIP(bare) !== 0 || isLoopback(host) || [own, `${own}.local`, ...given].includes(bare);
}

/** The host the browser asked for, without its port. */
export function hostOf({ headers }: Pick<FastifyRequest, 'headers'>): string {
  return (headers.host ?? '').toLowerCase().replace(/:\d+$/, '');
}
