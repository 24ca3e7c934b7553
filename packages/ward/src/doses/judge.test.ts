/** What stops a dose, and what is only said. */
import { expect, test } from 'vitest';
import type { DoseLine } from './dose-line.ts';
import type { DoseContext, EarlierDose } from './given.ts';
import { judgeDose } from './judge.ts';
import { doseContext, doseLine } from './test-line.ts';

const judged = (line: Partial<DoseLine>, context: Partial<DoseContext> = {}) =>
  judgeDose(doseLine(line), doseContext(context)).remarks;
const needsOf = (line: Partial<DoseLine>, context: Partial<DoseContext> = {}) =>
  Object.fromEntries(judged(line, context).map(({ code, needs }) => [code, needs]));
const mg = (value: number): Pick<DoseLine, 'dose'> => ({ dose: { value, unit: 'mg/kg' } });
const vial = (value: number): Pick<DoseLine, 'strength'> => ({ strength: { value, unit: 'mg/ml' } });
const earlier = (change: Partial<EarlierDose>): EarlierDose => ({
  doseId: 'dose-one',
  drug: 'buprenorphine',
  route: 'SC',
  site: '',
  amount: 0.02,
  givenAt: '2026-11-25T13:10:00Z',
  ...change,
});

test('a dose within its own species’ range, from the vial, of today’s mass: nothing is asked', () => {
  expect(Object.values(needsOf({})).filter((needs) => needs !== 'nothing')).toEqual([]);
});

test('a mass of yesterday, and one nobody dated, are asked about; midnight alone is not', () => {
  expect(needsOf({ weighedAt: '2026-11-24T08:00:00Z' })).toHaveProperty('mass-old', 'reason');
  expect(needsOf({ weighedAt: null })).toHaveProperty('mass-undated', 'reason');
  const night = { now: '2026-11-26T00:40:00Z' };
  expect(needsOf({ weighedAt: '2026-11-25T23:00:00Z' }, night)).not.toHaveProperty('mass-old');
  expect(needsOf({ weighedAt: '2026-11-26T08:00:00Z' })).toHaveProperty('mass-old', 'reason');
});

test('grams typed for kilograms', () => {
  expect(needsOf({ massG: 0.82 })).toHaveProperty('mass-odd', 'reason');
  expect(needsOf({ massG: 8200 })).toHaveProperty('mass-odd', 'reason');
});

test('0.0375 ml undiluted is stopped with the dilution that helps; at one part in four it is not', () => {
  const ketamine = { drug: 'ketamine', massG: 750, ...mg(5), ...vial(100) };
  const stop = judged(ketamine).find(({ code }) => code === 'small-volume');
  expect(stop).toMatchObject({ needs: 'reason', words: expect.stringContaining('One part in 4 would make 0.15 ml') });
  expect(needsOf({ ...ketamine, dilution: { parts: 4, diluent: 'saline' } })).not.toHaveProperty('small-volume');
});

test('less than half a mark cannot be signed at all', () => {
  expect(needsOf({ syringe: { capacityMl: 10, markMl: 0.5 } })).toHaveProperty('not-measurable', 'change');
});

test('beyond twice the highest published figure a second person is asked', () => {
  expect(needsOf(mg(0.4))).not.toHaveProperty('beyond-twice');
  expect(needsOf(mg(0.41))).toHaveProperty('beyond-twice', 'second person');
  expect(needsOf(mg(0.15))).toEqual(expect.objectContaining({ outside: 'reason' }));
});

test('squirrel ketamine: one table with 5 and 75 mg/kg is a tenfold stop at either end', () => {
  const squirrel = { species: 'red squirrel', massG: 310, drug: 'ketamine', ...vial(100) };
  expect(needsOf({ ...squirrel, ...mg(5) })).toHaveProperty('tenfold', 'reason');
  expect(needsOf({ ...squirrel, ...mg(75) })).toHaveProperty('tenfold', 'reason');
});

test('squirrel alfaxalone as printed, 15 micrograms, is called doubtful', () => {
  const line = {
    species: 'red squirrel',
    massG: 310,
    drug: 'alfaxalone',
    figureId: 'dose.squirrel.alfaxalone',
    dose: { value: 15, unit: 'µg/kg' },
    ...vial(10),
  } as const;
  expect(needsOf(line)).toMatchObject({ 'standing-suspect': 'reason', 'micro-milli': 'reason' });
});

test('adrenaline of older tables: withdrawn or older, and a second person', () => {
  const crash = { drug: 'adrenaline', route: 'IV', use: 'emergency', massG: 750, ...vial(1) } as const;
  expect(needsOf({ ...crash, ...mg(0.1), figureId: 'dose.emergency.adrenaline.high' })).toMatchObject({
    'standing-withdrawn': 'reason',
    'beyond-twice': 'second person',
    tenfold: 'reason',
  });
  const rabbit = { ...crash, species: 'rabbit', ...mg(0.2), figureId: 'dose.emergency.adrenaline.rabbit-older' };
  expect(needsOf(rabbit)).toMatchObject({ 'standing-older': 'reason', 'beyond-twice': 'second person' });
});

test('a recalled figure is no published one', () => {
  expect(needsOf({ drug: 'meloxicam', ...mg(0.2), ...vial(5), figureId: 'dose.hedgehog.meloxicam' })).toMatchObject({
    recalled: 'reason',
  });
});

test('strengths ten times apart are read aloud; one that is not known, too', () => {
  const crash = { drug: 'adrenaline', route: 'IV', ...mg(0.01) } as const;
  expect(needsOf({ ...crash, ...vial(1) })).toHaveProperty('strength-tenfold', 'reason');
  expect(needsOf(vial(10))).toHaveProperty('strength-other', 'reason');
  const micro = judged({ strength: { value: 1, unit: 'µg/ml' } }).find(({ code }) => code === 'strength-other');
  expect(micro?.words).toContain('Micrograms or milligrams?');
});

test('buprenorphine 8 h after the last: the formulary allows it, the pygmy hedgehog’s 36 to 48 h do not', () => {
  const again = { drug: 'buprenorphine', route: 'SC', ...mg(0.02), ...vial(0.3) } as const;
  const said = judged(again, { earlier: [earlier({})] }).find(({ code }) => code === 'may-add-up');
  expect(said).toMatchObject({ needs: 'nothing', words: expect.stringMatching(/6-8 h.*36 h.*48 h/) });
  const soon = needsOf(again, { earlier: [earlier({ givenAt: '2026-11-25T20:10:00Z' })] });
  expect(soon).toHaveProperty('too-soon', 'reason');
  expect(needsOf(again, { earlier: [earlier({ givenAt: null })] })).toHaveProperty('signed-already', 'reason');
});

test('another opioid the same day is mentioned', () => {
  const line = { drug: 'butorphanol', ...mg(0.2), ...vial(10) };
  expect(needsOf(line, { earlier: [earlier({})] })).toHaveProperty('same-family', 'nothing');
});

test('local anaesthetics add up over drugs and sites: half of each ceiling twice is whole, a little more is too much', () => {
  const block = { drug: 'bupivacaine', use: 'local anaesthetic', route: 'local', massG: 1000, ...vial(2.5) } as const;
  const before = earlier({ drug: 'lidocaine', route: 'local', site: 'skin', amount: 1 });
  expect(needsOf({ ...block, ...mg(0.5) }, { earlier: [before] })).toHaveProperty('local-total', 'nothing');
  expect(needsOf({ ...block, ...mg(0.55) }, { earlier: [before] })).toHaveProperty('local-ceiling', 'second person');
  const longAgo = { ...before, givenAt: '2026-11-24T20:00:00Z' };
  expect(needsOf({ ...block, ...mg(0.55) }, { earlier: [longAgo] })).not.toHaveProperty('local-ceiling');
});

test('volume limits of another species are called borrowed', () => {
  const big = { drug: 'ketamine', massG: 1000, ...mg(5), ...vial(10) };
  const said = judged({ ...big, dilution: null }).find(({ code }) => code === 'over-volume');
  expect(said?.words).toMatch(
    /0\.5 ml\/kg by IM is above the recommended .*borrowed from the rabbit, an extrapolation/,
  );
});

test('by mouth in a rabbit, amoxicillin-clavulanate is a stop; atropine too', () => {
  const rabbit = { species: 'rabbit', massG: 1400 } as const;
  const antibiotic = { ...rabbit, drug: 'amoxicillin-clavulanate', route: 'PO', use: 'infection' } as const;
  expect(judged({ ...antibiotic, ...mg(12.5), ...vial(175) })).toContainEqual(
    expect.objectContaining({ needs: 'reason', words: expect.stringContaining('unsafe in rabbits') }),
  );
  expect(judged({ ...rabbit, drug: 'atropine', ...mg(0.05), ...vial(0.6), route: 'IV' })).toContainEqual(
    expect.objectContaining({ needs: 'reason', words: expect.stringContaining('atropinesterase') }),
  );
});
