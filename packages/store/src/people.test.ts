import { expect, test } from 'vitest';
import type { PeopleStore, Person } from './index.ts';
import { onEveryDatabase, type Place } from './test/places.ts';

const AT = '2026-11-25T23:10:00.000Z';
const person = (id: string, more: Partial<Person> = {}): Person => ({
  ...{
    id,
    name: id,
    role: 'surgeon',
    isOwner: true,
    isActive: true,
    cases: null,
    password: 'hash',
    temporaryUntil: null,
    madeAt: AT,
  },
  ...more,
});

onEveryDatabase((newPlace) => {
  async function withPeople(use: (people: PeopleStore, place: Place) => Promise<void>): Promise<void> {
    const place = await newPlace();
    const store = await place.open();
    await use(store.people, place);
    expect(await store.verify()).toEqual([]);
    await store.close();
  }

  test('people are there again after the store was opened again, as they were', () =>
    withPeople(async (people, place) => {
      const carer = person('T. Ward', { role: 'carer', isOwner: false, cases: ['case-aaaa'], password: null });
      await people.add(carer);
      const again = await place.open();
      expect(await again.people.findByName('t.  WARD')).toEqual(carer);
      expect(await again.people.hasAccounts()).toBe(false);
      await again.close();
    }));

  test('a name is one person’s for good, in whatever case, also when that person is switched off', () =>
    withPeople(async (people) => {
      await people.add(person('R. Fenn'));
      await people.add(person('T. Okafor', { isActive: false }));
      await expect(people.add(person('another', { name: 'r. FENN' }))).rejects.toThrow(/somebody's name already/);
      await expect(people.add(person('third', { name: 'T. Okafor' }))).rejects.toThrow(/somebody's name already/);
    }));

  test('an owner who can sign in is always left, and a refused change changes nothing', () =>
    withPeople(async (people) => {
      await people.add(person('R. Fenn'));
      await people.add(person('A. Marsh', { password: null }));
      for (const change of [{ isOwner: false }, { isActive: false }, { password: null }])
        await expect(people.change('R. Fenn', change)).rejects.toThrow(/nobody would be left/);
      expect(await people.find('R. Fenn')).toEqual(person('R. Fenn'));
      await people.change('A. Marsh', { password: 'hash' });
      await people.change('R. Fenn', { isOwner: false });
      expect(await people.find('R. Fenn')).toMatchObject({ isOwner: false });
    }));

  test('tries count up until they are forgiven, and are not counted while somebody waits', () =>
    withPeople(async (people) => {
      const seen: number[] = [];
      const free = (failures: number, lastAt: string) => {
        seen.push(failures);
        return lastAt;
      };
      for (let i = 0; i < 3; i += 1) expect(await people.countTry('name:x', AT, free)).toBeNull();
      expect(await people.countTry('name:x', AT, () => '2026-11-25T23:11:00.000Z')).toBe('2026-11-25T23:11:00.000Z');
      await people.forgiveTries('name:x', 'last');
      await people.countTry('name:x', AT, free);
      await people.forgiveTries('name:x', 'all');
      await people.countTry('name:x', AT, free);
      await people.countTry('name:x', AT, free);
      expect(seen).toEqual([1, 2, 2, 1]);
    }));

  test('the log gives the newest first, a page at a time', () =>
    withPeople(async (people) => {
      for (let i = 1; i <= 5; i += 1)
        await people.note({ id: `2026-${i}`, at: AT, who: 'R. Fenn', what: `${i}`, about: '', address: '' });
      const first = await people.log(2, null);
      const rest = await people.log(9, first.at(-1)?.id ?? null);
      expect([...first, ...rest].map(({ what }) => what)).toEqual(['5', '4', '3', '2', '1']);
    }));
});
