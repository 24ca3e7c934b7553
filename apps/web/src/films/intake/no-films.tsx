import { ChooseFilms } from './choose-films.tsx';
import type { Intake } from './use-intake.ts';

/** The stage before the first film. */
export function NoFilms({ intake }: { readonly intake: Intake }) {
  return (
    <section className="no-films">
      <TwoFilms />
      <p className="lead">No films yet. Drop two views of the bone here, or choose files.</p>
      <p>
        <ChooseFilms intake={intake} word="Choose files" isMain />
      </p>
      <p className="quiet">
        DICOM from any X-ray machine, TIFF, PNG or JPEG; a folder or a ZIP of them; or paste a picture. Lay a steel ball
        of known size beside the bone, at its height.
      </p>
    </section>
  );
}

function TwoFilms() {
  return (
    <svg
      width="180"
      height="130"
      viewBox="0 0 180 130"
      fill="none"
      stroke="currentColor"
      strokeWidth="2"
      strokeLinejoin="round"
      strokeLinecap="round"
      aria-hidden="true"
    >
      <path d="M6 6h76v118H6zM98 6h76v118H98z" />
      <path d="M36 18c-3 4-2 8 1 12l3 30M54 18c3 4 2 8-1 12l-2 29M41 66l-5 40c-3 4-3 6-1 9M52 66l-4 40c3 3 4 6 3 9M36 63l19-3" />
      <path d="M130 18c-3 4-2 8 1 12v30M146 18c3 4 2 8-1 12v29M132 66l4 40c-2 4-2 6 0 9M145 66l4 40c2 3 3 6 2 9M128 63l20-2" />
      <circle cx="20" cy="56" r="6" />
      <circle cx="160" cy="84" r="6" />
    </svg>
  );
}
