/** What the file says of itself, for the user to confirm; never acted on. */
import { type Film, personalFacts } from '@bonewright/film';

const SHOWN = [
  ['viewPosition', 'view'],
  ['view', 'view'],
  ['imageLaterality', 'side'],
  ['laterality', 'side'],
  ['bodyPart', 'part'],
  ['species', 'species'],
  ['patientName', 'name'],
  ['patientId', 'number'],
  ['responsiblePerson', 'owner'],
  ['institution', 'taken at'],
] as const;

export function HeaderFacts({ header }: { readonly header: Film['header'] }) {
  const said = SHOWN.flatMap(([key, word]) =>
    header[key] ? [`${word} ${header[key].replaceAll('^', ' ').trim()}`] : [],
  );
  if (said.length === 0) return <span className="caption">The file does not say which view it is.</span>;
  return (
    <span className="caption">
      The file says: {said.join(', ')}. Go by the marker on the film.
      {personalFacts(header).length > 0 && ' Its names stay in the file: no paper carries them.'}
    </span>
  );
}
