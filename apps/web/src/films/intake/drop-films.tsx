/** Where films come in: dropped anywhere on the stage, or chosen; many at once. */
import { type DragEvent, type ReactNode, useId, useState } from 'react';
import { FieldWhy } from '../../form/field.tsx';
import type { Intake } from './use-intake.ts';

interface DropFilmsProps {
  readonly intake: Intake;
  readonly children: ReactNode;
}

export function DropFilms({ intake, children }: DropFilmsProps) {
  const [isOver, setOver] = useState(false);
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    intake.take([...event.dataTransfer.files]);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is the mouse's way; the button beside it is for everybody
    <div
      className={isOver ? 'drop-films drop-films-over' : 'drop-films'}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget instanceof Node ? event.relatedTarget : null))
          setOver(false);
      }}
      onDrop={drop}
    >
      <Arrivals intake={intake} />
      {children}
    </div>
  );
}

function Arrivals({ intake }: { readonly intake: Intake }) {
  if (intake.arriving.length === 0) return null;
  return (
    <ul className="arrivals" role="status">
      {intake.arriving.map(({ key, name, why }) => (
        <li key={key}>
          {why === null ? (
            <span className="quiet">Reading {name}</span>
          ) : (
            <>
              <FieldWhy why={why} />
              <button type="button" className="button-small" onClick={() => intake.dismiss(key)}>
                Close
              </button>
            </>
          )}
        </li>
      ))}
    </ul>
  );
}

interface ChooseFilesProps {
  readonly intake: Intake;
  readonly word: string;
  readonly isMain?: boolean;
}

export function ChooseFiles({ intake, word, isMain }: ChooseFilesProps) {
  const id = useId();
  return (
    <span className="choose-files">
      <input
        id={id}
        type="file"
        multiple
        className="sr-only"
        onChange={(event) => {
          intake.take([...(event.target.files ?? [])]);
          event.target.value = '';
        }}
      />
      <label htmlFor={id} className={isMain ? 'button button-main' : 'button'}>
        {word}
      </label>
    </span>
  );
}
