/** Photographs of the patient: made smaller and freed of what the camera wrote into them, kept here at once, sent when they can be. */
import { type CaseState, mayRecord } from '@bonewright/casebook';
import { useEffect, useId, useState } from 'react';
import { Field, FieldWhy } from '../form/field.tsx';
import { fileBytes } from '../sync/files.ts';
import type { Append } from '../sync/new-event.ts';
import { useRole } from '../sync/session.ts';
import { useDraft } from '../sync/use-draft.ts';
import { moment } from '../words/time.ts';
import { keepPhoto } from './keep-photo.ts';

interface PhotographsProps {
  readonly state: CaseState;
  readonly append: Append;
}

const readText = (kept: unknown): string => (typeof kept === 'string' ? kept : '');
const SHOWN = 6;

export function Photographs({ state, append }: PhotographsProps) {
  const id = useId();
  const mayAdd = mayRecord(useRole(), 'photo-added');
  const words = useDraft(`photo.${state.caseId}`, readText);
  const [says, setSays] = useState<string | null>(null);
  const [why, setWhy] = useState<string | null>(null);
  const add = async (file: File) => {
    setWhy(null);
    setSays('keeping the photograph');
    try {
      const photo = await keepPhoto(file);
      append([{ kind: 'photo-added', payload: { at: new Date().toISOString(), photo, words: words.value.trim() } }]);
      words.clear();
      setSays('The photograph is kept.');
    } catch {
      setSays(null);
      setWhy(`${file.name} is no picture that this browser can read. A JPEG or PNG is.`);
    }
  };
  const { photos } = state.care;
  return (
    <section aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>Photographs</h2>
      {photos.length > SHOWN && <p className="quiet">{`The last ${SHOWN} of ${photos.length}.`}</p>}
      <ul className="photographs">
        {photos
          .slice(-SHOWN)
          .toReversed()
          .map(({ value, by, seq }) => (
            <li key={seq}>
              <Photograph sha256={value.photo.sha256} says={value.words || 'the patient'} />
              <span className="caption">{`${moment(value.at)}, ${by}${value.words ? `: ${value.words}` : ''}`}</span>
            </li>
          ))}
      </ul>
      {mayAdd && (
        <>
          <Field
            label="What it shows"
            value={words.value}
            onChange={words.set}
            help="Said first: which pin, which side. A photograph does not replace a look."
          />
          <p className="photo-take">
            <label htmlFor={id} className="button">
              Take or choose a photograph
            </label>
            <input
              id={id}
              type="file"
              accept="image/*"
              className="sr-only"
              onChange={({ target }) => {
                const [file] = target.files ?? [];
                target.value = '';
                if (file) void add(file);
              }}
            />
          </p>
        </>
      )}
      <p role="status">{says}</p>
      {why && <FieldWhy why={why} />}
    </section>
  );
}

function Photograph({ sha256, says }: { readonly sha256: string; readonly says: string }) {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    let made: string | null = null;
    let isGone = false;
    void fileBytes(sha256)
      .then((bytes) => {
        if (isGone) return;
        made = URL.createObjectURL(new Blob([Uint8Array.from(bytes)], { type: 'image/jpeg' }));
        setUrl(made);
      })
      // Not on this device, and the server does not answer: said in place of the picture.
      .catch(() => setUrl(''));
    return () => {
      isGone = true;
      if (made) URL.revokeObjectURL(made);
    };
  }, [sha256]);
  if (url === null) return <span className="quiet">reading</span>;
  return url ? <img src={url} alt={`Photograph: ${says}`} /> : <span className="quiet">not on this device</span>;
}
