/** Requests made up from the route list: right and wrong places, bodies that are nearly right, half right and nonsense. */
import fc from 'fast-check';
import type { InjectOptions } from 'fastify';
import type { RouteRight } from '../rights/every-route.ts';
import { CASE, note, opened } from './served.ts';

const SEED = 1;

export interface FuzzedRequest extends InjectOptions {
  readonly url: string;
}

export function fuzzedRequests(routes: readonly RouteRight[], count: number): FuzzedRequest[] {
  const route = fc.constantFrom(...routes.filter(({ method }) => method !== 'HEAD'));
  const part = fc.oneof(
    fc.constantFrom(CASE, '0'.repeat(64), '%00', '..%2f..', '💥', '__proto__'),
    fc.string({ maxLength: 70 }),
  );
  const request = fc.record({ route, part, query: fc.option(fc.string({ maxLength: 20 })), body: body() });
  return fc
    .sample(request, { seed: SEED, numRuns: count })
    .map(({ route: { method, url }, part: inPlace, query, body: sent }) => {
      const filled = url.replace(
        /:\w+|\*/g,
        inPlace === CASE || /^[%.\w]*$/.test(inPlace) ? inPlace : encodeURIComponent(inPlace),
      );
      const asked =
        query === null ? filled : `${filled}?after=${encodeURIComponent(query)}&before=${encodeURIComponent(query)}`;
      const isReading = method === 'GET';
      return {
        method: method as 'GET',
        url: asked,
        ...(!isReading && { payload: sent.payload, headers: { 'content-type': sent.type } }),
      };
    });
}

function body(): fc.Arbitrary<{ readonly payload: string; readonly type: string }> {
  const known = fc.constantFrom<unknown>(
    { events: [opened()] },
    { events: [note(2)] },
    { events: [note(2), note(3, 'nurse 1')] },
    { name: 'R. Fenn', password: 'wrong wrong wrong' },
    { name: 'N. Ew', role: 'nurse' },
    { role: 'surgeon', isOwner: true },
    { isActive: false },
    { personId: 'nobody', days: 3 },
    { cases: [CASE] },
    { token: 'x' },
    { reason: 'twice' },
    { caseId: CASE },
  );
  const keys = fc.constantFrom('events', 'name', 'role', 'cases', 'days', '__proto__', 'constructor', 'password');
  const spoilt = fc
    .tuple(known, keys, fc.jsonValue())
    .map(([value, key, odd]) => ({ ...(value as object), [key]: odd }));
  const json = fc
    .oneof(known, spoilt, fc.jsonValue())
    .map((value) => ({ payload: JSON.stringify(value), type: 'application/json' }));
  const other = fc.record({
    payload: fc.string({ maxLength: 200 }),
    type: fc.constantFrom('application/json', 'application/octet-stream', 'text/html', 'multipart/form-data', ''),
  });
  return fc.oneof({ arbitrary: json, weight: 4 }, { arbitrary: other, weight: 1 });
}
