import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import {
  caseFileOf,
  filmsBefore,
  foldCase,
  foldPractice,
  laterFilmSets,
  outOfDate,
  stockWarnings,
} from '@bonewright/casebook';
import { constructSchema } from '@bonewright/construct';
import { decodeFilm } from '@bonewright/film';
import { openStore } from '@bonewright/store';
import { expect, onTestFinished, test } from 'vitest';
import { loadDemonstration } from './load.ts';

const NOW = new Date('2026-03-14T23:10:00Z');

async function emptyStore() {
  const dir = mkdtempSync(join(tmpdir(), 'bonewright-demo-'));
  const store = await openStore(dir);
  onTestFinished(async () => {
    await store.close();
    rmSync(dir, { recursive: true, force: true });
  });
  return store;
}

test('four invented patients, each at another stage, whole and up to date, with films that decode', {
  timeout: 300_000,
}, async () => {
  const store = await emptyStore();
  expect(await loadDemonstration(store, { now: NOW })).toBe(4);
  const rows = await store.list();
  expect(rows.map(({ species, massG, bone, stage }) => [species, massG, bone, stage]).sort()).toEqual([
    ['hedgehog', 820, 'femur', 'recovery'],
    ['rabbit', 1400, 'tibia', 'rechecks'],
    ['red squirrel', 310, 'tibia', 'plan'],
    ['tawny owl', 440, 'tibiotarsus', 'films'],
  ]);
  const { stock } = foldPractice(await store.practice.read());
  expect(stockWarnings(stock, '2026-03-14').map(({ words }) => words)).toContainEqual(
    expect.stringContaining('past its day'),
  );
  for (const { caseId, demonstration, stage, changedAt } of rows) {
    expect(demonstration).toBe(true);
    expect(changedAt <= NOW.toISOString()).toBe(true);
    const state = foldCase(await store.read(caseId));
    expect(state.setAside).toEqual([]);
    expect(outOfDate(state)).toEqual([]);
    expect(filmsBefore(state).map((film) => film.view.value)).toEqual(['craniocaudal', 'mediolateral']);
    for (const { trace } of filmsBefore(state)) expect(trace?.value.mmPerPixel.value).toBeGreaterThan(0);
    const days = stage === 'rechecks' ? [0, 7, 20] : [];
    expect(laterFilmSets(state).map(({ day }) => day)).toEqual(days);
    for (const { file } of state.films) {
      const found = await store.getAttachment(file.value.sha256);
      const { rows: height, cols, header } = await decodeFilm(await buffer(found!.bytes), file.value.fileName);
      expect([height, cols]).toEqual([file.value.rows, file.value.cols]);
      expect(Object.values(header).join(' ')).toContain('Thornbeck');
    }
    if (stage === 'recovery' || stage === 'rechecks') {
      const { pins, putty, counts } = state.theatre;
      const planned = constructSchema.parse(state.construct?.value.construct).pins;
      expect(pins.map(({ placed }) => placed !== null)).toEqual(planned.map(() => true));
      expect(putty?.hard).toBeTruthy();
      expect(counts.every(({ value }) => value.in === value.out)).toBe(true);
      // What went in came out of the practice's drawer, from a batch that is named.
      const used = stock.uses.filter(({ value }) => value.forCase === caseId);
      expect(used.length).toBeGreaterThan(planned.length);
      expect(used.every(({ value }) => value.batch !== '')).toBe(true);
    }
    if (stage === 'films') continue;
    expect(caseFileOf(state).missing).toEqual([]);
    const chosen = state.construct?.value.summary;
    // A plan that stops may stand in the record only as the last resort that it is.
    expect(chosen?.verdict === 'stop').toBe(chosen?.lastResort);
  }
  expect(await store.verify()).toEqual([]);
});

test('making can be stopped at once, and what is in the store stays sound', async () => {
  const store = await emptyStore();
  const stop = new AbortController();
  const loading = loadDemonstration(store, { now: NOW, signal: stop.signal });
  setTimeout(() => stop.abort(), 300);
  await expect(loading).rejects.toMatchObject({ name: 'AbortError' });
  expect(await store.verify()).toEqual([]);
});
