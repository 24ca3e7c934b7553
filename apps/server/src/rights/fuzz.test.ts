/** Whatever is asked, by whomever: never a fault of ours, never half a record. `BONEWRIGHT_FUZZ=2000 npx vitest run` on this file is the long run. */
import { expect, test } from 'vitest';
import { fuzzedRequests } from '../test/fuzzed-requests.ts';
import { owner, somebody } from '../test/people.ts';
import { CASE, opened, served } from '../test/served.ts';

const COUNT = Number(process.env.BONEWRIGHT_FUZZ ?? 400);

test(`${COUNT} requests made up from the route list (seed 1): no 500, no partial write`, async () => {
  const on = await served(undefined, { requestsPerMinute: 1_000_000, isEmptyWanted: true });
  const asks = [(await owner(on)).ask, (await somebody(on, 'nurse')).ask, (await somebody(on, 'carer', [CASE])).ask];
  await on.store.append([opened()]);
  // A thread a sheet, and patients being drawn, are slow and have tests of their own.
  const routes = on.app.routeRights.filter(({ url }) => !/events$|sheet|demo/.test(url) || url.includes(':caseId'));
  const faults: string[] = [];
  for (const [i, request] of fuzzedRequests(routes, COUNT).entries()) {
    const before = (await on.store.read(CASE)).length;
    const answer = await asks[i % asks.length]!(request);
    if (answer.statusCode >= 500) faults.push(`${request.method} ${request.url}: ${answer.body}`);
    const added = (await on.store.read(CASE)).length - before;
    const isSaid = request.url === `/api/cases/${CASE}/events` && answer.statusCode === 200;
    if (added !== 0 && !(isSaid && answer.json().added === added))
      faults.push(`${request.url}: ${added} half recorded`);
  }
  expect(faults).toEqual([]);
  expect(await on.store.verify()).toEqual([]);
  expect((await on.store.people.list()).some(({ isOwner, isActive }) => isOwner && isActive)).toBe(true);
});
