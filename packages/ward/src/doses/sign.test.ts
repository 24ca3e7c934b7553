import { InputError } from '@bonewright/fault';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { judgeDose } from './judge.ts';
import { signDose, signedDoseSchema } from './sign.ts';
import { doseContext, doseLine } from './test-line.ts';

const plainAnswers = { by: 'Ada Marl', reasons: {}, secondPerson: null };
const dose = (value: number) => doseLine({ dose: { value, unit: 'mg/kg' } });

test('a dose with nothing against it is signed as it stands', () => {
  const signed = signDose(doseLine(), doseContext(), plainAnswers);
  expect(signedDoseSchema.parse(signed)).toEqual(signed);
  expect(signed).toMatchObject({ unit: 'mg', drawnMl: 0.08, secondPerson: null });
});

test('a stop without a reason is not signed, and the refusal says which', () => {
  expect(() => signDose(dose(0.15), doseContext(), plainAnswers)).toThrow(/outside every published range.*say why/);
  const answered = { ...plainAnswers, reasons: { outside: 'light before, deeper now' } };
  expect(signDose(dose(0.15), doseContext(), answered).remarks).toContainEqual(
    expect.objectContaining({ code: 'outside', reason: 'light before, deeper now' }),
  );
});

test('the second person is somebody else', () => {
  const line = dose(0.5);
  const reasons = Object.fromEntries(judgeDose(line, doseContext()).remarks.map(({ code }) => [code, 'because']));
  for (const secondPerson of [null, ' ', 'ada marl'])
    expect(() => signDose(line, doseContext(), { ...plainAnswers, reasons, secondPerson })).toThrow(/second person/);
  const signed = signDose(line, doseContext(), { ...plainAnswers, reasons, secondPerson: 'Ben Hay' });
  expect(signed.secondPerson).toBe('Ben Hay');
});

test('whatever is typed: signed only with every stop answered', () => {
  const lines = fc.record({ value: fc.double({ min: 1e-4, max: 100, noNaN: true }), answered: fc.boolean() });
  fc.assert(
    fc.property(lines, ({ value, answered }) => {
      const line = dose(value);
      const { remarks } = judgeDose(line, doseContext());
      const isOpen = remarks.some(({ needs }) => needs === 'change' || (needs !== 'nothing' && !answered));
      const reasons = answered ? Object.fromEntries(remarks.map(({ code }) => [code, 'because'])) : {};
      const sign = () => signDose(line, doseContext(), { by: 'Ada Marl', reasons, secondPerson: 'Ben Hay' });
      if (isOpen) expect(sign).toThrow(InputError);
      else expect(signedDoseSchema.safeParse(sign()).success).toBe(true);
    }),
  );
});

test('a record that claims a signature with a stop unanswered is not read', () => {
  const signed = signDose(doseLine(), doseContext(), plainAnswers);
  const remark = { code: 'outside', words: 'outside', needs: 'reason', reason: null } as const;
  expect(signedDoseSchema.safeParse({ ...signed, remarks: [remark] }).success).toBe(false);
  expect(signedDoseSchema.safeParse({ ...signed, drawnMl: 0.8 }).success).toBe(false);
  const second = { ...remark, needs: 'second person', reason: 'yes' } as const;
  expect(signedDoseSchema.safeParse({ ...signed, remarks: [second] }).success).toBe(false);
});
