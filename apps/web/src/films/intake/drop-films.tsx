/** Where films come in: dropped anywhere on the stage, or pasted; files, folders, ZIPs, many at once. */
import { type DragEvent, type ReactNode, useEffect, useRef, useState } from 'react';
import { ArrivalList } from './arrival-list.tsx';
import { chosenFiles, droppedFiles } from './incoming.ts';
import type { Intake } from './use-intake.ts';

interface DropFilmsProps {
  readonly intake: Intake;
  readonly children: ReactNode;
}

export function DropFilms({ intake, children }: DropFilmsProps) {
  const [isOver, setOver] = useState(false);
  usePaste(intake);
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    void droppedFiles(event.dataTransfer).then(intake.take);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is the mouse's way; the buttons beside it are for everybody
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
      <ArrivalList intake={intake} />
      {children}
    </div>
  );
}

/** Files pasted anywhere on the page; pasted text goes where it was meant. */
function usePaste(intake: Intake): void {
  const latest = useRef(intake);
  latest.current = intake;
  useEffect(() => {
    const paste = (event: ClipboardEvent) => {
      const files = [...(event.clipboardData?.files ?? [])];
      if (files.length === 0) return;
      event.preventDefault();
      latest.current.take(chosenFiles(files));
    };
    addEventListener('paste', paste);
    return () => removeEventListener('paste', paste);
  }, []);
}
