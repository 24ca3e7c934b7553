/** One film in a thread of its own: a hostile file harms nothing but itself. Whole jobs in, whole answers out. */
import { InputError } from '@bonewright/fault';
import {
  calibrate,
  configureCodecs,
  decodeFilm,
  type Film,
  type GreyImage,
  greyImage,
  type Look,
  looksOf,
  modalityValue,
  type Scale,
  suggestWindow,
  type Trace,
  type TraceRequest,
  traceFilm,
  windowToBytes,
} from '@bonewright/film';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { expose, transfer } from 'comlink';
import wasmUrl from 'dcmjs-codecs/build/dcmjs-native-codecs.wasm?url';
import type { Answer, FilmFacts, Region } from './film-facts.ts';

configureCodecs({ wasmUrl });

let image: GreyImage | null = null;
let thin: GreyImage | null = null;

async function answer<T>(job: () => T | Promise<T>): Promise<Answer<T>> {
  try {
    return { ok: true, value: await job() };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const { what, path, hint } = error;
    return { ok: false, what, path, hint };
  }
}

function opened(): GreyImage {
  if (!image) throw new Error('no film has been opened in this thread');
  return image;
}

function factsOf(film: Film, sha: string): FilmFacts {
  const { pixels: _, grey, ...facts } = film;
  const ends = [film.min, film.max].map((stored) => modalityValue(grey, stored));
  return { ...facts, sha256: sha, looks: looksOf(opened()), levels: [Math.min(...ends), Math.max(...ends)] };
}

/** That part of the film alone, as an image of its own. */
function cut({ left, top, right, bottom }: Region): GreyImage {
  const { cols, pixels, ...rest } = opened();
  const width = right - left;
  const part = pixels.slice(0, width * (bottom - top));
  for (let row = top; row < bottom; row++)
    part.set(pixels.subarray(row * cols + left, row * cols + right), (row - top) * width);
  return { ...rest, pixels: part, rows: bottom - top, cols: width };
}

/** Fewer pixels than this are painted within a frame of the display. */
const QUICK_PIXELS = 2 ** 20;

/** The middle pixel of each square of pixels: enough to see by while the levels move. */
function thinned(image: GreyImage): GreyImage {
  const { rows, cols, pixels } = image;
  const step = Math.ceil(Math.sqrt((rows * cols) / QUICK_PIXELS));
  if (step === 1) return image;
  const [thinRows, thinCols] = [Math.floor(rows / step), Math.floor(cols / step)];
  const thin = pixels.slice(0, thinRows * thinCols);
  const middle = step >> 1;
  for (let row = 0; row < thinRows; row++)
    for (let col = 0; col < thinCols; col++)
      thin[row * thinCols + col] = pixels[(row * step + middle) * cols + col * step + middle] ?? 0;
  return { ...image, rows: thinRows, cols: thinCols, pixels: thin };
}

function paint(source: GreyImage, look: Look): ImageData {
  const { rows, cols } = source;
  const bytes = new Uint8ClampedArray(4 * rows * cols);
  windowToBytes(source, look, bytes);
  return new ImageData(bytes, cols, rows);
}

async function bitmapOf(source: GreyImage, look: Look): Promise<ImageBitmap> {
  const bitmap = await createImageBitmap(paint(source, look));
  return transfer(bitmap, [bitmap]);
}

const jobs = {
  open: (bytes: Uint8Array, name: string) =>
    answer(async () => {
      const film = await decodeFilm(bytes, name);
      image = greyImage(film);
      return factsOf(film, bytesToHex(sha256(bytes)));
    }),
  /** The whole film through a look, ready to be drawn. */
  picture: (look: Look): Promise<ImageBitmap> => bitmapOf(opened(), look),
  /** With few pixels where there are many: a picture for the moment. */
  sketch: (look: Look): Promise<ImageBitmap> => {
    thin ??= thinned(opened());
    return bitmapOf(thin, look);
  },
  /** The window that suits this part of the film. */
  windowOn: (region: Region) => suggestWindow(cut(region)),
  /** The same as a file that an image element can show. */
  pictureFile: async (look: Look): Promise<Blob> => {
    const data = paint(opened(), look);
    const canvas = new OffscreenCanvas(data.width, data.height);
    canvas.getContext('2d')?.putImageData(data, 0, 0);
    return canvas.convertToBlob({ type: 'image/png' });
  },
  scale: (calibration: TraceRequest['calibration']): Promise<Answer<Scale>> =>
    answer(() => calibrate(opened(), calibration)),
  trace: (request: TraceRequest): Promise<Answer<Trace>> => answer(() => traceFilm(opened(), request)),
};

export type FilmJobs = typeof jobs;

expose(jobs);
