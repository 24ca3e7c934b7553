import { InputError } from '@bonewright/fault';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import schema1 from '../fixtures/schema-1.json' with { type: 'json' };
import { caseFileOf } from './case-file-of.ts';
import { checkEvent, type Payload, type RecordedEvent, readEvent } from './events.ts';
import { applyEvent, emptyCase, foldCase } from './fold.ts';
import { outOfDate } from './out-of-date.ts';
import { sentenceOf } from './story.ts';

const events: RecordedEvent[] = schema1.map(readEvent);
const caseId = events[0]?.caseId ?? '';

function next(kind: string, payload: unknown, extra: object = {}): RecordedEvent {
  const seq = events.length + 1;
  const head = { schema: 1, id: `later-event-${seq}`, caseId, seq, at: '2026-11-26T08:00:00Z', by: 'R. Fenn' };
  return readEvent({ ...head, kind, payload, ...extra });
}

describe('a case recorded with schema 1 (kept for good, never edited)', () => {
  const state = foldCase(events);

  test('every event is understood and none set aside', () => {
    expect(state.seq).toBe(events.length);
    expect(state.setAside).toEqual([]);
  });

  test('the patient is as last amended, and the amendment says who and why', () => {
    expect(state.patient?.value).toMatchObject({
      number: '26-041',
      massG: 310,
      species: 'red squirrel',
      sex: 'female',
    });
    expect(state.patient).toMatchObject({ by: 'T. Okafor', why: 'weighed under anaesthesia', seq: 2 });
  });

  test('a film taken out is gone, the others keep their order, view, clicks, trace and line', () => {
    expect(state.films.map((f) => [f.file.value.fileName, f.view.value])).toEqual([
      ['a.dcm', 'craniocaudal'],
      ['b.dcm', 'mediolateral'],
    ]);
    for (const film of state.films) {
      expect(film.trace?.value.segments.map(({ name }) => name)).toEqual(['proximal', 'distal']);
      expect(film.clicks?.value.segments).toHaveLength(2);
      expect(film.fractureLine?.value).toEqual([
        [400, 622],
        [470, 630],
      ]);
    }
  });

  test('bone, fracture, drawer, construct, ranking, sheet and note are there', () => {
    expect(state.bone?.value.bone.stations).toHaveLength(5);
    expect(state.fracture?.value.gapMm).toBe(0.8);
    expect(state.drawer?.value.pins[0]?.count).toBe(8);
    expect(state.construct?.value.construct.pins).toHaveLength(4);
    expect(state.ranking?.value.candidates).toBe(4200);
    expect(state.sheets[0]?.value.constructSeq).toBe(state.construct?.seq);
    expect(state.notes[0]?.value.text).toContain('old oak');
    expect(state.enteredStage?.value).toBe('theatre');
  });
});

test('events added one at a time give the same state as all from scratch, whatever the cut', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: events.length }), (cut) => {
      const before = foldCase(events.slice(0, cut));
      expect(events.slice(cut).reduce(applyEvent, before)).toEqual(foldCase(events));
    }),
  );
});

test('a state is never changed by a later event', () => {
  const early = foldCase(events.slice(0, 12));
  const copy = structuredClone(early);
  events.slice(12).reduce(applyEvent, early);
  expect(early).toEqual(copy);
});

test.each(['film-calibrated', 'film-clicked'])('%s again: the trace made before no longer stands', (kind) => {
  const first = events.find((event) => event.kind === kind);
  const state = foldCase([...events, next(kind, first?.payload)]);
  expect(state.films[0]?.trace).toBeNull();
  expect(state.films[1]?.trace).not.toBeNull();
});

describe('an event of the future', () => {
  const unknownKind = next('frame-off', { film: 'healed', clinical: 'healed' });
  const newerSchema = next('drawer-set', { trays: 3 }, { schema: 2 });

  test.each([
    ['unknown kind', unknownKind],
    ['newer schema of a known kind', newerSchema],
  ])('%s: kept word for word, set aside with the reason, and the rest of the case still reads', (_, event) => {
    const state = foldCase([...events, event]);
    expect(state.seq).toBe(events.length + 1);
    expect(state.setAside).toEqual([{ event, because: 'it was written by a newer version of Bonewright' }]);
    expect(state.drawer).toEqual(foldCase(events).drawer);
  });
});

test('an event about a film that is not there is set aside, never thrown', () => {
  const state = foldCase([...events, next('film-removed', { filmId: 'film0nowhere' })]);
  expect(state.setAside[0]?.because).toBe('its film is not in the case');
});

test('opening twice does not overwrite the patient', () => {
  const state = foldCase([...events, next('case-opened', { ...foldCase(events).patient?.value, species: 'red fox' })]);
  expect(state.patient?.value.species).toBe('red squirrel');
  expect(state.setAside).toHaveLength(1);
});

test('a gap in the numbers is refused with both numbers', () => {
  const [first, , third] = events;
  expect(() => foldCase([first!, third!])).toThrow(
    new InputError('event 3 follows event 1', 'seq', 'read the events between them first'),
  );
});

test('events of two cases are refused', () => {
  const other = { ...next('note-added', { text: 'x', stage: null }), caseId: 'another-case' };
  expect(() => foldCase([...events, other])).toThrow(/another case/);
});

test('a case with no events is an empty case', () => {
  expect(foldCase([])).toEqual(emptyCase(''));
});

describe('a new event is refused', () => {
  const good = { ...next('note-added', { text: 'x', stage: null }) };
  test.each([
    ['a mass of nothing', { kind: 'patient-amended', payload: { massG: 0 } }, 'payload.massG'],
    ['an amendment that changes nothing', { kind: 'patient-amended', payload: {} }, 'payload'],
    [
      'a number that is text',
      { kind: 'keep-out-set', payload: { proximalMm: '5', distalMm: 6 } },
      'payload.proximalMm',
    ],
    ['not a number', { kind: 'keep-out-set', payload: { proximalMm: Number.NaN, distalMm: 6 } }, 'payload.proximalMm'],
    ['a kind nobody knows', { kind: 'frame-off', payload: {} }, 'kind'],
    ['nobody signed', { by: '' }, 'by'],
    ['a time without a zone', { at: '2026-11-25 23:10' }, 'at'],
    ['a newer schema', { schema: 2 }, 'schema'],
    ['an unknown key', { payload: { text: 'x', stage: null, colour: 'red' } }, 'payload'],
  ])('%s', (_, wrong, path) => {
    const refused = (() => {
      try {
        return checkEvent({ ...good, ...wrong });
      } catch (error) {
        return error;
      }
    })();
    expect(refused).toBeInstanceOf(InputError);
    expect(refused).toMatchObject({ path });
  });

  test('and the same event without the mistake is taken', () => {
    expect(checkEvent(good)).toEqual(good);
  });
});

test('a known kind of this schema with a damaged payload is not mistaken for a future one', () => {
  expect(() => next('film-calibrated', { filmId: 'film0craniocaudal01', calibration: 'ball' })).toThrow(InputError);
});

describe('theatre', () => {
  const because = { why: 'typed for the wrong pin' };
  const done = (...said: readonly (readonly [kind: string, payload: unknown, extra?: object])[]) =>
    foldCase([
      ...events,
      ...said.map(([kind, payload, extra], i) => ({
        ...next(kind, payload, extra),
        seq: events.length + 1 + i,
      })),
    ]).theatre;
  const placed = (pin: number, sMm: number) => ({ pin, sMm, aboutDeg: 0, tiltDeg: 0, cortices: 2 });

  test('a pin placed again stands where it was last said, with the reason', () => {
    const { pins } = done(['pin-placed', placed(1, 9)], ['pin-placed', placed(1, 11), because]);
    expect(pins).toHaveLength(1);
    expect(pins[0]?.placed).toMatchObject({ value: { sMm: 11 }, why: 'typed for the wrong pin' });
  });

  test('a pin taken back is to be placed again; where it was tried is not forgotten', () => {
    const tried = { pin: 2, why: 'the wire skids', triedMm: 20 };
    const { pins } = done(
      ['pin-skipped', tried],
      ['pin-placed', placed(2, 23)],
      ['pin-taken-back', { pin: 2 }, because],
    );
    expect(pins[0]?.placed).toBeNull();
    expect(pins[0]?.tried.map(({ value }) => value.triedMm)).toEqual([20]);
  });

  test('a pin left out says why, until it is placed after all', () => {
    const out = ['pin-skipped', { pin: 3, why: 'no room', triedMm: null }] as const;
    expect(done(out).pins[0]?.leftOut?.value.why).toBe('no room');
    expect(done(out, ['pin-placed', placed(3, 33)]).pins[0]?.leftOut).toBeNull();
  });

  test('a new mix is not hard yet, and a count is the last one of its thing', () => {
    const mixed = { grams: 6, at: '2026-11-25T23:40:00Z', workingMinutes: null };
    const { putty, counts } = done(
      ['putty-mixed', mixed],
      ['putty-hard', { at: '2026-11-25T23:50:00Z' }],
      ['putty-mixed', { ...mixed, grams: 4 }],
      ['counted', { what: 'swabs', in: 10, out: 9 }],
      ['counted', { what: 'swabs', in: 10, out: 10 }],
    );
    expect(putty).toMatchObject({ mixed: { value: { grams: 4 } }, hard: null });
    expect(counts.map(({ value }) => value.out)).toEqual([10]);
  });

  test('putty that nobody mixed cannot be hard: set aside, never thrown', () => {
    const state = foldCase([...events, next('putty-hard', { at: '2026-11-25T23:50:00Z' })]);
    expect(state.setAside[0]?.because).toBe('no putty was mixed');
  });

  test('each column keeps its last bench test', () => {
    const test = (columnId: string, value: number) => ({
      columnId,
      youngMPa: { value, sd: 100 },
      yieldMPa: null,
      testedAt: '2026-11-20T10:00:00Z',
    });
    const said = [test('putty 6', 2400), test('putty 8', 2500), test('putty 6', 3100)];
    const state = foldCase([
      ...events,
      ...said.map((payload, i) => ({ ...next('bench-tested', payload), seq: events.length + 1 + i })),
    ]);
    expect(state.benchTests.map(({ value }) => [value.columnId, value.youngMPa.value])).toEqual([
      ['putty 6', 3100],
      ['putty 8', 2500],
    ]);
  });

  test.each([
    ['a pin of no number', 'pin-placed', { ...placed(1, 9), pin: 0 }],
    ['a pin through three walls', 'pin-placed', { ...placed(1, 9), cortices: 3 }],
    ['a pin skipped for no reason', 'pin-skipped', { pin: 1, why: '', triedMm: null }],
    ['half a swab', 'counted', { what: 'swabs', in: 1.5, out: 1 }],
    ['putty of no weight', 'putty-mixed', { grams: 0, at: '2026-11-25T23:40:00Z', workingMinutes: null }],
  ])('%s is refused', (_, kind, payload) => {
    expect(() => next(kind, payload)).toThrow(InputError);
  });
});

describe('a trace corrected by hand', () => {
  const film = foldCase(events).films[0]!;
  const { filmId } = film;
  const corrections = [
    { segment: 'proximal', sMm: 4, side: 'outer-left', place: [401, 300] },
    { segment: 'distal', sMm: 9, exclude: true },
  ];
  const corrected = next('film-corrected', { filmId, corrections });

  test('keeps the trace as it was made beside the corrections, and the bone is out of date', () => {
    const state = foldCase([...events, corrected]);
    expect(state.films[0]?.corrections?.value).toEqual(corrections);
    expect(state.films[0]?.trace).toEqual(film.trace);
    expect(outOfDate(state)).toContainEqual(expect.objectContaining({ part: 'bone' }));
    expect(sentenceOf(corrected)).toContain('2 places');
  });
  test('traced again, the corrections are gone', () => {
    const first = events.find((e) => e.kind === 'film-traced' && (e.payload as { filmId: string }).filmId === filmId);
    const again = { ...next('film-traced', first?.payload), seq: events.length + 2 };
    expect(foldCase([...events, corrected, again]).films[0]).not.toHaveProperty('corrections');
  });
});

describe('measured by hand', () => {
  const filmId = foldCase(events).films[0]?.filmId;
  const length = {
    filmId,
    measureId: 'measure-a',
    measure: 'length',
    points: [
      [0, 0],
      [30, 40],
    ],
  };
  const at = (seq: number, event: ReturnType<typeof next>) => ({ ...event, seq });
  const found = { value: 5, sd: 0.06, unit: 'mm' };
  const taken = next('hand-measured', { ...length, found });
  const n = events.length;

  test('moved, it stands once, where it was put last; taken back, it is gone and in the story', () => {
    const moved = next('hand-measured', {
      ...length,
      points: [
        [0, 0],
        [60, 80],
      ],
      found: { ...found, value: 10 },
    });
    const state = foldCase([...events, taken, at(n + 2, moved)]);
    expect(state.films[0]?.handMeasures?.map(({ value }) => value.points[1])).toEqual([[60, 80]]);
    const back = next('hand-measure-taken-back', { filmId, measureId: 'measure-a' });
    expect(foldCase([...events, taken, at(n + 2, back)]).films[0]?.handMeasures).toEqual([]);
    expect([taken, back].map(sentenceOf)).toEqual([
      'Length measured by hand: 5.00 mm.',
      'Measurement by hand taken back.',
    ]);
  });
  test('an angle needs three points', () => {
    expect(() => next('hand-measured', { ...length, measure: 'angle', found: null })).toThrow(/points|3/);
  });
});

describe('after the repair', () => {
  const scores = { medial: 2, lateral: null, cranial: 3, caudal: 1 };
  test('scores of a day are replaced by later ones of the same day and scale', () => {
    const scored = next('cortices-scored', { scale: 'mRUST', day: 21, filmIds: [], scores });
    const again = {
      ...next('cortices-scored', { scale: 'mRUST', day: 21, filmIds: [], scores: { ...scores, caudal: 2 } }),
      seq: events.length + 2,
    };
    const state = foldCase([...events, scored, again]);
    expect(state.scores.map((s) => s.value.scores.caudal)).toEqual([2]);
    expect(sentenceOf(scored)).toContain('mRUST 6 from 3 of 4 cortices');
  });
  test('a kept reduction is what is planned on, and goes with the bone it was made on', () => {
    const joined = events.find((e) => e.kind === 'bone-joined')!;
    const { bone } = joined.payload as Payload<'bone-joined'>;
    const move = { translationMm: [1, -2], angulationDeg: [-8, 3], lengthMm: -0.5, rotationDeg: 0 };
    const lengthMm = { value: bone.lengthMm.value! - 0.5, sd: 0.4 };
    const stations = bone.stations.map((s) => ({ ...s, sMm: (s.sMm * lengthMm.value) / bone.lengthMm.value! }));
    const reduced = next('bone-reduced', { move, bone: { ...bone, lengthMm, stations } });
    const state = foldCase([...events, reduced]);
    expect(state.reduction?.value.move).toEqual(move);
    expect(caseFileOf(state).caseFile?.bone.lengthMm).toBe(lengthMm.value);
    expect(outOfDate(state).map((o) => o.part)).toContain('construct');
    const again = { ...next('bone-joined', joined.payload), seq: events.length + 2 };
    expect(foldCase([...events, reduced, again]).reduction).toBeNull();
  });
  test('a plan is placed on a film that is in the case, by three points', () => {
    const filmId = foldCase(events).films[0]!.filmId;
    const matches = [0, 1, 2].map((i) => ({ plan: [i * 10, i * i], film: [i * 100, 20] }));
    expect(foldCase([...events, next('plan-placed', { filmId, matches })]).films[0]?.placing?.value.matches).toEqual(
      matches,
    );
    expect(() => next('plan-placed', { filmId, matches: matches.slice(1) })).toThrow(InputError);
  });
  test('a RUST of 4 for one cortex is refused', () => {
    const over = { ...scores, medial: 4 };
    expect(() => next('cortices-scored', { scale: 'RUST', day: 21, filmIds: [], scores: over })).toThrow(/1 to 3/);
  });
});
