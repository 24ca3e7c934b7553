/** Makes a photograph small enough to send from a phone, without place and camera, and keeps it by its hash. */
import { fileHash } from '../films/engine/file-hash.ts';
import { keepFile } from '../sync/files.ts';

const LONGEST_SIDE_PX = 1600;
const QUALITY = 0.85;

export interface KeptPhoto {
  readonly sha256: string;
  readonly fileName: string;
  readonly byteLength: number;
}

/** Throws where the browser cannot read the picture. */
export async function keepPhoto(file: File): Promise<KeptPhoto> {
  const picture = await createImageBitmap(file);
  const shrink = Math.min(1, LONGEST_SIDE_PX / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * shrink));
  canvas.height = Math.max(1, Math.round(picture.height * shrink));
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
  if (!blob) throw new Error('the picture could not be written');
  const bytes = new Uint8Array(await blob.arrayBuffer());
  const sha256 = await fileHash(bytes);
  await keepFile(sha256, bytes);
  return { sha256, fileName: `${file.name.replace(/\.\w+$/, '').slice(0, 190)}.jpg`, byteLength: bytes.byteLength };
}
