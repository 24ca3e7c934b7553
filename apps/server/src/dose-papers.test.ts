/** Dose papers over HTTP come from the record alone. */
import { type CaseEvent, checkEvent } from '@bonewright/casebook';
import { type DoseLine, judgeDose, signDose } from '@bonewright/ward';
import { expect, test } from 'vitest';
import { CASE, opened, served } from './test/served.ts';

const now = new Date().toISOString();
const line: DoseLine = {
  drug: 'meloxicam',
  use: 'pain relief',
  route: 'IM',
  site: '',
  species: 'tawny owl',
  massG: 440,
  weighedAt: now,
  dose: { value: 0.2, unit: 'mg/kg' },
  figureId: null,
  strength: { value: 5, unit: 'mg/ml' },
  dilution: { parts: 10, diluent: 'saline' },
  syringe: { capacityMl: 1, markMl: 0.01 },
};
const event = (seq: number, kind: string, payload: object): CaseEvent =>
  checkEvent({ schema: 1, id: `${CASE}-dose-${seq}`, caseId: CASE, seq, at: now, by: 'R. Fenn', kind, payload });

test('unsigned: refused in words; signed: a PDF', async () => {
  const { app, store } = await served();
  await store.append([opened(), event(2, 'dose-proposed', { doseId: 'dose-0001', line })]);
  const refused = await app.inject(`/api/cases/${CASE}/papers/doses`);
  expect([refused.statusCode, refused.json().error]).toEqual([400, expect.stringContaining('meloxicam is not signed')]);
  const context = { now, minutesEastOfUtc: 0, earlier: [] };
  const reasons = Object.fromEntries(judgeDose(line, context).remarks.map(({ code }) => [code, 'because']));
  const signature = signDose(line, context, { by: 'R. Fenn', reasons, secondPerson: 'T. Okafor' });
  await store.append([event(3, 'dose-signed', { doseId: 'dose-0001', signature })]);
  const paper = await app.inject(`/api/cases/${CASE}/papers/doses`);
  expect([paper.statusCode, paper.headers['content-type']]).toEqual([200, 'application/pdf']);
  expect((await app.inject(`/api/cases/${CASE}/papers/emergency`)).statusCode).toBe(400);
  expect((await app.inject('/api/cases/case-zzzz/papers/doses')).statusCode).toBe(400);
});
