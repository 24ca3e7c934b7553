/** docs/rights.md is written from the tables and the routes themselves: `npx vitest run -u` on this file writes it again. */
import { eventSchema, KIND_RIGHTS, mayRecord, RIGHTS, ROLES } from '@bonewright/casebook';
import fastify from 'fastify';
import { expect, test } from 'vitest';
import { served } from '../test/served.ts';
import { type RouteRight, requireRights } from './every-route.ts';

const PAGE = '../../../../docs/rights.md';
const row = (...cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
const head = (...cells: readonly string[]): string[] => [row(...cells), row(...cells.map(() => '---'))];

function rightsPage(routes: readonly RouteRight[]): string {
  const rights = Object.entries(RIGHTS).map(([right, { means, holders }]) => row(right, holders.join(', '), means));
  const ofRoutes = [...new Set(routes.filter(({ method }) => method !== 'HEAD').map(routeRow))].sort();
  const kinds = eventSchema.options.map((option) => {
    const kind = option.shape.kind.value;
    return row(kind, ...ROLES.map((role) => (mayRecord(role, kind) ? 'yes' : '-')));
  });
  return [
    '# Who may do what',
    '',
    'Written from `packages/casebook/src/rights` and the routes of the server; a test fails when it is out of date.',
    'While nobody has an account, whoever sits at this machine holds every right and types who signs.',
    '',
    '## Rights',
    '',
    ...head('right', 'held by', 'means'),
    ...rights,
    '',
    '## Routes',
    '',
    ...head('route', 'right'),
    ...ofRoutes,
    '',
    '## Kinds of event',
    '',
    'A kind without a row of its own is the surgeon’s alone. Each is signed by whoever is signed in.',
    '',
    ...head('kind', ...ROLES),
    ...kinds,
    '',
  ].join('\n');
}

const routeRow = ({ method, url, right }: RouteRight): string => row(`\`${method} ${url}\``, right);

test('the page says what the tables and routes say', async () => {
  const { app } = await served();
  expect(Object.keys(KIND_RIGHTS).length).toBeGreaterThan(0);
  await expect(rightsPage(app.routeRights)).toMatchFileSnapshot(PAGE);
});

test('a route without a right stops the server before it listens', () => {
  const app = fastify();
  requireRights(app);
  expect(() => app.get('/api/forgotten', async () => 'open')).toThrow('GET /api/forgotten names no right');
});
