/** Photographs by the phone's camera: made smaller here, kept until they are sent, without the place they were taken at. */
import type { CaseState } from '@bonewright/casebook';
import { useId, useState } from 'react';
import { fileHash } from '../films/engine/file-hash.ts';
import { FieldWhy } from '../form/field.tsx';
import { keepFile } from '../sync/files.ts';
import type { Append } from '../sync/new-event.ts';
import { moment } from '../words/time.ts';

interface PhotographProps {
  readonly state: CaseState;
  readonly append: Append;
}

const LONGEST_PX = 1600;
const QUALITY = 0.85;

export function Photograph({ state, append }: PhotographProps) {
  const id = useId();
  const [why, setWhy] = useState<string | null>(null);
  const { photos } = state.care;
  const take = async (file: File) => {
    try {
      const bytes = await smaller(file);
      const sha256 = await fileHash(bytes);
      await keepFile(sha256, bytes);
      const at = new Date().toISOString();
      const photo = { sha256, fileName: `${at.slice(0, 10)}.jpg`, byteLength: bytes.byteLength };
      append([{ kind: 'photo-added', payload: { at, photo, words: '' } }]);
      setWhy(null);
    } catch {
      setWhy('This is no picture that the phone can read. Take another one.');
    }
  };
  return (
    <section aria-labelledby="photo-title">
      <h2 id="photo-title">Photograph the leg</h2>
      <p className="carer-photo">
        <label htmlFor={id}>Take one, or choose one</label>
        <input
          id={id}
          type="file"
          accept="image/*"
          capture="environment"
          onChange={(event) => {
            const file = event.target.files?.[0];
            event.target.value = '';
            if (file) void take(file);
          }}
        />
      </p>
      {why && <FieldWhy why={why} />}
      <p role="status">
        {photos.length === 0
          ? 'None taken yet.'
          : `${photos.length} taken, the last ${moment(photos.at(-1)?.value.at ?? '')}.`}
      </p>
    </section>
  );
}

/** Drawn anew, so that nothing but the picture is left in the file. */
async function smaller(file: File): Promise<Uint8Array<ArrayBuffer>> {
  const picture = await createImageBitmap(file);
  const scale = Math.min(1, LONGEST_PX / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
  if (!blob) throw new Error('the canvas gave no picture');
  return new Uint8Array(await blob.arrayBuffer());
}
