import { describe, expect, test } from 'vitest';
import { PAGE, served } from './test/served.ts';

describe('the pages', () => {
  test.each(['/', '/case/case-aaaa/plan'])('%s is the page, asked for afresh each time', async (url) => {
    const { app } = await served();
    const answer = await app.inject(url);
    expect([answer.statusCode, answer.body, answer.headers['cache-control']]).toEqual([200, PAGE, 'no-cache']);
  });

  test('a built asset may be kept for good: its name holds its hash', async () => {
    const { app } = await served();
    const answer = await app.inject('/assets/main-1.js');
    expect(answer.headers['content-type']).toMatch(/javascript/);
    expect(answer.headers['cache-control']).toContain('immutable');
  });

  test.each(['/assets/main-2.js', '/api/nothing', '/favicon.ico'])(
    '%s, which is not there, is 404 and no page',
    async (url) => {
      const { app } = await served();
      const answer = await app.inject(url);
      expect(answer.statusCode).toBe(404);
      expect(answer.json().error).toContain(url);
    },
  );

  test('a file outside the built pages cannot be had', async () => {
    const { app } = await served();
    for (const url of [
      '/../data/records.sqlite',
      '/..%2fdata%2frecords.sqlite',
      '/assets/..%2f..%2fdata/records.sqlite',
    ])
      expect((await app.inject(url)).rawPayload.toString('latin1')).not.toContain('SQLite format');
  });
});

describe('what the browser is told', () => {
  test('scripts and workers from our own files only; WebAssembly runs; nothing is turned to HTTPS', async () => {
    const { app } = await served();
    const { headers } = await app.inject('/');
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval'");
    expect(policy).toContain("worker-src 'self'");
    expect(policy).not.toContain('upgrade-insecure-requests');
    expect(policy).not.toContain("'unsafe-inline'");
    expect(headers['strict-transport-security']).toBeUndefined();
  });

  test('a page of another site cannot ask for a change', async () => {
    const { app } = await served();
    const asked = (origin: string) =>
      app.inject({ method: 'POST', url: '/api/empty', headers: { origin, host: '127.0.0.1:4180' } });
    expect((await asked('http://elsewhere.test')).statusCode).toBe(403);
    expect((await asked('null')).statusCode).toBe(403);
    expect((await asked('http://127.0.0.1:4180')).statusCode).toBe(200);
  });
});
