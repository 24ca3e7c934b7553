import { expect, test } from 'vitest';
import { served } from './test/served.ts';

const station = (sMm: number, outer: number, canal: number) => ({
  sMm,
  outerMm: [outer, outer],
  canalMm: [canal, canal],
});
const caseFile = {
  patient: { species: 'red squirrel', massG: 310, ageClass: 'adult' },
  bone: {
    name: 'tibia',
    side: 'left',
    lengthMm: 52,
    stations: [station(0, 6.4, 4.6), station(26, 3.8, 2.4), station(52, 4.8, 3.4)],
  },
  fracture: { fromMm: 24, toMm: 26.5, gapMm: 0.8 },
  drawer: {
    pins: [{ id: 'a', diameterMm: 0.9, kind: 'smooth', material: 'steel-cold-worked', count: 8 }],
    imPins: [],
    columns: [{ id: 'p', material: 'epoxy-putty', diameterMm: 7 }],
  },
  construct: {
    pins: [8, 18, 33, 44].map((sMm) => ({ drawerId: 'a', sMm })),
    column: { drawerId: 'p', clearanceMm: 4 },
  },
  samples: 10,
};
const title = { patient: 'Red squirrel 26-041', lengthsFrom: '5 mm ball, both films' };
const ask = async (payload: object) => (await served()).app.inject({ method: 'POST', url: '/api/sheet', payload });

test('the sheet of a construct comes as a PDF', async () => {
  const answer = await ask({ caseFile, title });
  expect(answer.statusCode).toBe(200);
  expect(answer.headers['content-type']).toBe('application/pdf');
  expect(answer.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
  expect(answer.rawPayload.toString('latin1').trimEnd()).toMatch(/%%EOF$/);
});

test.each([
  ['no construct', { caseFile: { ...caseFile, construct: undefined }, title }, 'caseFile.construct'],
  [
    'a pin past the bone',
    { caseFile: { ...caseFile, bone: { ...caseFile.bone, lengthMm: 40 } }, title },
    /^caseFile\.bone/,
  ],
  ['nobody’s name on it', { caseFile, title: { ...title, patient: '' } }, 'title.patient'],
  ['no case at all', { title }, 'caseFile'],
])('refused in words with its place: %s', async (_, payload, path) => {
  const answer = await ask(payload);
  expect(answer.statusCode).toBe(400);
  expect(answer.json()).toEqual({ error: expect.stringMatching(/^[^\n]{10,}$/), path: expect.stringMatching(path) });
});
