/** Buttons that choose films: files, or a whole folder. */
import { useId } from 'react';
import { chosenFiles } from './incoming.ts';
import type { Intake } from './use-intake.ts';

interface ChooseFilmsProps {
  readonly intake: Intake;
  readonly word: string;
  readonly isMain?: boolean;
}

export function ChooseFilms({ intake, word, isMain = false }: ChooseFilmsProps) {
  return (
    <span className="choose-files">
      <Chooser intake={intake} word={word} isMain={isMain} isFolder={false} />
      <Chooser intake={intake} word="A folder" isMain={false} isFolder />
    </span>
  );
}

type ChooserProps = Required<ChooseFilmsProps> & { readonly isFolder: boolean };

function Chooser({ intake, word, isMain, isFolder }: ChooserProps) {
  const id = useId();
  return (
    <span className="choose-file">
      <input
        id={id}
        ref={(input) => {
          if (input) input.webkitdirectory = isFolder;
        }}
        type="file"
        multiple
        className="sr-only"
        onChange={(event) => {
          intake.take(chosenFiles(event.target.files ?? []));
          event.target.value = '';
        }}
      />
      <label htmlFor={id} className={isMain ? 'button button-main' : 'button'}>
        {word}
      </label>
    </span>
  );
}
