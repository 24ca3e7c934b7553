/** Files over all patients, for those who hold the right to each. */
import { holds, THIS_MACHINE } from '@bonewright/casebook';
import { useSession } from '../sync/session.ts';

const FILES = [
  ['read the calendar', '/api/calendar.ics', 'Calendar of looks'],
  ['read outcomes', '/api/outcomes.csv', 'Table of outcomes'],
] as const;

export function BoardFiles() {
  const { person } = useSession();
  const subject = person ? { ...THIS_MACHINE, ...person } : THIS_MACHINE;
  return (
    <>
      {FILES.filter(([right]) => holds(subject, right)).map(([, href, word]) => (
        <a key={href} href={href} download>
          {word}
        </a>
      ))}
    </>
  );
}
