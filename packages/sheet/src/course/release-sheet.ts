/** The release sheet: whether it is ready and by whose word, when it gets dark, what goes with it, boxes for the evening itself. */
import { chosenLimit, gapsBesideList, latestMass } from '@bonewright/casebook';
import { readinessFor, releaseLimits, sunTimes } from '@bonewright/ward';
import { localMoment } from '../doses/dose-facts.ts';
import { boxes, type CoursePaper, type CoursePaperFacts, coursePaper, dayInWords } from './course-frame.ts';

const CAUTION =
  'A list, not a verdict: whoever releases answers for it. Check the law for this species where it goes back; some may not be released at all.';

/** Makes the PDF of the release sheet as the record stands. */
export async function releaseSheet(facts: CoursePaperFacts): Promise<Uint8Array> {
  const on = coursePaper(facts, 'Release', CAUTION);
  place(on, facts);
  open(on, facts);
  readiness(on, facts);
  limits(on, facts);
  evening(on, facts);
  return on.paper.finish();
}

function place({ flow }: CoursePaper, { state, minutesEastOfUtc }: CoursePaperFacts): void {
  const { place: found } = state.admission.noted?.value ?? {};
  const mass = latestMass(state);
  flow.heading('Where and who');
  flow.paragraph(
    found
      ? `Found at ${[found.words, found.mapReference].filter(Boolean).join(', ')}`
      : 'Where it was found is not in the record.',
    { size: 12, face: 'strong' },
  );
  if (found?.latitudeDeg != null) flow.paragraph(`${found.latitudeDeg}° N, ${found.longitudeDeg}° E`);
  flow.paragraph(
    mass
      ? `Weighs ${mass.massG} g${mass.at ? `, ${localMoment(mass.at, minutesEastOfUtc)}` : ''}.`
      : 'It was never weighed.',
  );
  const { released } = state.course;
  if (released)
    flow.paragraph(
      `Released ${localMoment(released.value.at, minutesEastOfUtc)} at ${released.value.place}, with ${released.value.with || 'nothing named'}. Signed ${released.by}.${released.why ? ` Reason for what was not met: ${released.why}.` : ''}`,
      { face: 'strong' },
    );
}

function open({ flow }: CoursePaper, facts: CoursePaperFacts): void {
  const gaps = gapsBesideList(facts.state, localDay(facts, 0));
  flow.heading('Open, beside the list');
  if (gaps.length === 0) flow.paragraph('Nothing.');
  for (const gap of gaps) flow.paragraph(`•  ${gap}`);
}

function readiness({ flow }: CoursePaper, { state, minutesEastOfUtc }: CoursePaperFacts): void {
  flow.heading('List');
  flow.table(
    [
      { heading: 'looked at', share: 0.42 },
      { heading: 'met', share: 0.12 },
      { heading: 'what was seen', share: 0.24 },
      { heading: 'who', share: 0.22 },
    ],
    readinessFor(state.patient?.value.species ?? '').map(({ id, asks }) => {
      const said = state.course.readiness.find(({ value }) => value.item === id);
      if (!said) return [asks, 'not looked', '', ''];
      return [asks, said.value.isMet, said.value.words, `${said.by}, ${localMoment(said.at, minutesEastOfUtc)}`];
    }),
  );
}

function limits({ flow }: CoursePaper, { state }: CoursePaperFacts): void {
  const all = releaseLimits(state.patient?.value.species ?? '');
  if (all.length === 0) return;
  flow.heading('Limits on which sources disagree');
  for (const { subject, sources } of all) {
    const chosen = chosenLimit(state, subject);
    const by = state.course.limits.find(({ value }) => value.subject === subject)?.by;
    for (const { id, name, value, unit, source } of sources)
      flow.paragraph(
        `${id === chosen ? `Chosen by ${by}: ` : ''}${name}, ${value} ${unit === 'degC' ? '°C' : unit} (${source.title})`,
        { face: id === chosen ? 'strong' : 'regular' },
      );
  }
}

const NIGHTS = 3;
const DAY_MS = 86_400_000;

const localDay = ({ made, minutesEastOfUtc }: CoursePaperFacts, daysOn: number): string =>
  new Date(made.getTime() + minutesEastOfUtc * 60_000 + daysOn * DAY_MS).toISOString().slice(0, 10);

function evening(on: CoursePaper, facts: CoursePaperFacts): void {
  const { state, minutesEastOfUtc } = facts;
  const { latitudeDeg = null, longitudeDeg = null } = state.admission.noted?.value.place ?? {};
  const { forecast } = state.course;
  on.flow.heading('Dusk and forecast');
  on.flow.paragraph(
    forecast
      ? `Night of ${dayInWords(forecast.value.night)}: lowest ${forecast.value.lowestC} °C${forecast.value.words ? `, ${forecast.value.words}` : ''} (${forecast.value.source || 'source not named'}; ${forecast.by}).`
      : 'No forecast is in the record.',
  );
  if (latitudeDeg !== null && longitudeDeg !== null) {
    const hour = (iso: string | null): string => (iso ? localMoment(iso, minutesEastOfUtc).split(', ')[1]! : 'none');
    const nights = Array.from({ length: NIGHTS }, (_, i) => localDay(facts, i));
    on.flow.table(
      ['night of', 'sunset', 'dusk', 'sunrise after'].map((heading) => ({ heading, share: 0.25 })),
      nights.map((night) => {
        const { sunset, dusk, nextSunrise } = sunTimes({ latitudeDeg, longitudeDeg }, night);
        return [dayInWords(night), hour(sunset), hour(dusk), hour(nextSunrise)];
      }),
    );
  }
  if (state.course.released) return;
  on.flow.heading('On the evening');
  boxes(on, ['released at', 'place', 'by, sign']);
  boxes(on, ['what went with it', 'ring or chip', 'how it went off']);
}
