import fc from 'fast-check';
import { expect, test } from 'vitest';
import { byMass, dropsPerMinute, fluidPlan, maintenanceMlPerDay, secondsPerDrop } from './fluid-plan.ts';

test('rat of 300 g, 5 % dry: 15 ml deficit and 30 ml a day (leaflet for rabbits and rodents)', () => {
  const plan = fluidPlan({
    massG: 300,
    dehydrationPercent: 5,
    maintenanceMlPerKgDay: 100,
    otherLossesMl: 0,
    overHours: 24,
  });
  expect(plan.deficitMl).toBeCloseTo(15, 9);
  expect(plan.maintenanceMl).toBeCloseTo(30, 9);
  expect(maintenanceMlPerDay(300, 100)).toBeCloseTo(30, 9);
});

test('bird of 0.8 kg, 10 % dry, 48 ml/kg/day: 80 and 38.4 ml in 24 h, 4.9 ml/h (avian fluid page)', () => {
  const plan = fluidPlan({
    massG: 800,
    dehydrationPercent: 10,
    maintenanceMlPerKgDay: 48,
    otherLossesMl: 0,
    overHours: 24,
  });
  expect(plan.deficitMl).toBeCloseTo(80, 9);
  expect(plan.maintenanceMl).toBeCloseTo(38.4, 9);
  expect(plan.mlPerHour).toBeCloseTo(4.93, 2);
});

test('rabbit of 2.5 kg at 10 ml/kg/h through 60 drops a ml: 25 ml/h, a drop each 2.4 s (leaflet says 2 to 3 s)', () => {
  expect(byMass(2500, 10)).toBeCloseTo(25, 9);
  expect(secondsPerDrop(25, 60)).toBeCloseTo(2.4, 9);
  expect(dropsPerMinute(25, 60)).toBeCloseTo(25, 9);
  expect(secondsPerDrop(0, 60)).toBeNull();
});

test('what runs in over the hours is what was asked for', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 50, max: 5000, noNaN: true }),
      fc.double({ min: 0, max: 15, noNaN: true }),
      fc.double({ min: 1, max: 72, noNaN: true }),
      (massG, dehydrationPercent, overHours) => {
        const asked = { massG, dehydrationPercent, maintenanceMlPerKgDay: 75, otherLossesMl: 3, overHours };
        const plan = fluidPlan(asked);
        expect(plan.mlPerHour * overHours).toBeCloseTo(plan.deficitMl + 3 + plan.maintenanceMl, 6);
      },
    ),
  );
});

test.each([
  ['massG', { massG: 0 }],
  ['overHours', { overHours: 0 }],
  ['dehydrationPercent', { dehydrationPercent: 101 }],
  ['otherLossesMl', { otherLossesMl: Number.NaN }],
])('a wrong %s is refused by name', (path, wrong) => {
  const right = { massG: 300, dehydrationPercent: 5, maintenanceMlPerKgDay: 75, otherLossesMl: 0, overHours: 24 };
  expect(() => fluidPlan({ ...right, ...wrong })).toThrow(path);
});
