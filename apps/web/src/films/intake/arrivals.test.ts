import { expect, test } from 'vitest';
import { after, isBusy, NO_ARRIVALS, type Step } from './arrivals.ts';

const files = ['a', 'b', 'c'].map((key) => ({ key, name: `${key}.dcm` }));
const run = (...steps: Step[]) => steps.reduce(after, after(NO_ARRIVALS, { kind: 'came', files }));

test('every file has its line until all are done; then only refusals stay, with their words', () => {
  const part = run({ kind: 'ended', key: 'a', ended: 'in' }, { kind: 'reading', key: 'b' });
  expect(part.lines.map(({ state }) => state)).toEqual(['in', 'reading', 'waiting']);
  const whole = run(
    { kind: 'ended', key: 'a', ended: 'in' },
    { kind: 'ended', key: 'b', ended: { why: 'b.dcm is empty' } },
    { kind: 'ended', key: 'c', ended: 'in' },
  );
  expect(whole.lines).toMatchObject([{ name: 'b.dcm', why: 'b.dcm is empty' }]);
  expect(isBusy(whole)).toBe(false);
});

test('what is no film in a folder is counted by name and has no line', () => {
  const { lines, noFilms } = run({ kind: 'ended', key: 'b', ended: 'no-film' });
  expect(noFilms).toEqual(['b.dcm']);
  expect(lines.map(({ key }) => key)).toEqual(['a', 'c']);
});
