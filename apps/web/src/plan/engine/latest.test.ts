import { expect, test } from 'vitest';
import { latestOnly } from './latest.ts';

test('of jobs that come in while one runs only the last is done', async () => {
  const done: number[] = [];
  let finish: () => void = () => {};
  const ask = latestOnly(async (job: number) => {
    done.push(job);
    await new Promise<void>((resolve) => {
      finish = resolve;
    });
  });
  for (const job of [1, 2, 3, 4]) ask(job);
  expect(done).toEqual([1]);
  finish();
  await new Promise((resolve) => setTimeout(resolve));
  expect(done).toEqual([1, 4]);
});
