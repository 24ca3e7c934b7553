import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { served } from './test/served.ts';

const film = Buffer.from(Uint8Array.from({ length: 300_000 }, (_, i) => (i * i) & 255));
const sha256 = createHash('sha256').update(film).digest('hex');
const headers = { 'content-type': 'application/octet-stream' };

test('a file goes in by its hash and comes out byte for byte, as plain bytes no browser will open', async () => {
  const { app } = await served();
  const url = `/api/attachments/${sha256}`;
  const put = await app.inject({ method: 'PUT', url, payload: film, headers });
  expect([put.statusCode, put.json()]).toEqual([200, { sha256, byteLength: film.length }]);
  const got = await app.inject(url);
  expect(got.rawPayload.equals(film)).toBe(true);
  expect(got.headers).toMatchObject({
    'content-type': 'application/octet-stream',
    'x-content-type-options': 'nosniff',
    'content-disposition': 'attachment',
    'content-security-policy': "sandbox; default-src 'none'",
    'content-length': String(film.length),
  });
});

test('a page is kept and given back like any file, never as a page', async () => {
  const { app } = await served();
  const page = '<script>alert(1)</script>';
  const kept = (await app.inject({ method: 'POST', url: '/api/attachments', payload: page, headers })).json();
  const got = await app.inject(`/api/attachments/${kept.sha256}`);
  expect([got.body, got.headers['content-type']]).toEqual([page, 'application/octet-stream']);
});

test('without its hash: the answer says it', async () => {
  const { app } = await served();
  const kept = await app.inject({ method: 'POST', url: '/api/attachments', payload: film, headers });
  expect(kept.json()).toEqual({ sha256, byteLength: film.length });
});

test.each([
  ['changed on the way', 'PUT', `/api/attachments/${'0'.repeat(64)}`, film, headers, 400],
  ['empty', 'POST', '/api/attachments', Buffer.alloc(0), headers, 400],
  ['sent as JSON', 'POST', '/api/attachments', { film: 1 }, { 'content-type': 'application/json' }, 400],
  ['under a name that is no hash', 'PUT', '/api/attachments/..%2f..%2fetc', film, headers, 400],
] as const)('refused in words and not kept: %s', async (_, method, url, payload, sentHeaders, status) => {
  const { app } = await served();
  const answer = await app.inject({ method, url, payload, headers: sentHeaders });
  expect(answer.statusCode).toBe(status);
  expect(answer.json().error).toMatch(/\S/);
  expect((await app.inject(`/api/attachments/${sha256}`)).statusCode).toBe(404);
});
