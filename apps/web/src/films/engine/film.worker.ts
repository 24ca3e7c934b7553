/** One film in a thread of its own: a hostile file harms nothing but itself. Whole jobs in, whole answers out. */
import {
  calibrate,
  configureCodecs,
  cutOut,
  decodeFilm,
  type ExpectedRod,
  type Film,
  findPins,
  type GreyImage,
  greyImage,
  halved,
  type Look,
  looksOf,
  modalityValue,
  type PinSearch,
  prepareCodecs,
  type Region,
  type Scale,
  sizeOfFilm,
  squareUp,
  suggestWindow,
  type Trace,
  type TraceRequest,
  traceFilm,
  windowToBytes,
  writePng,
} from '@bonewright/film';
import { expose, transfer } from 'comlink';
import wasmUrl from 'dcmjs-codecs/build/dcmjs-native-codecs.wasm?url';
import { type Answer, answer } from './answer.ts';
import { fileHash } from './file-hash.ts';
import type { FilmFacts, PartWish, SquareWish } from './film-facts.ts';

configureCodecs({ wasmUrl });

/** A plate is about that wide: what it will ask for first is made while the film is being kept. */
const USUAL_PLATE_PX = 700;

/** A film of nothing, on which a new thread practises. */
const PRACTICE = { rows: 256, cols: 256, photometric: 'MONOCHROME2', bitsStored: 12 };
const PRACTICE_PART: Region = { left: 0, top: 0, right: 128, bottom: 128 };
const PRACTICE_ROUNDS = 20;

let file = new Uint8Array();
/** The film, then ever half as large, as far as anybody asked. */
const sizes: GreyImage[] = [];

function ofLevel(level: number): GreyImage {
  const image = sizes[level];
  if (image) return image;
  if (level === 0) throw new Error('no film has been opened in this thread');
  const half = halved(ofLevel(level - 1));
  sizes[level] = half;
  return half;
}

const opened = (): GreyImage => ofLevel(0);

function factsOf(film: Film): FilmFacts {
  const { pixels: _, grey, ...facts } = film;
  const ends = [film.min, film.max].map((stored) => modalityValue(grey, stored));
  return { ...facts, looks: looksOf(opened()), levels: [Math.min(...ends), Math.max(...ends)] };
}

function paint(source: GreyImage, look: Look): ImageData {
  const { rows, cols } = source;
  const bytes = new Uint8ClampedArray(4 * rows * cols);
  windowToBytes(source, look, bytes);
  return new ImageData(bytes, cols, rows);
}

const jobs = {
  /** Answers when the thread is ready: the codecs loaded, and what shows a film compiled by showing a small one. */
  ready: async () => {
    const grey: GreyImage = { ...PRACTICE, pixels: new Uint16Array(PRACTICE.rows * PRACTICE.cols) };
    const [first] = looksOf(grey);
    for (let round = 0; first && round < PRACTICE_ROUNDS; round++)
      paint(cutOut(halved(grey), PRACTICE_PART), first.look);
    await prepareCodecs();
    return true;
  },
  open: (bytes: Uint8Array<ArrayBuffer>, name: string): Promise<Answer<FilmFacts>> =>
    answer(async () => {
      file = bytes;
      const film = await decodeFilm(bytes, name);
      sizes.push(greyImage(film));
      setTimeout(() => ofLevel(Math.round(Math.log2(Math.max(1, film.cols / USUAL_PLATE_PX)))));
      return factsOf(film);
    }),
  fileHash: (): Promise<string> => fileHash(file),
  /** A part of the film through a look, ready to be drawn. */
  part: async ({ look, level, region }: PartWish): Promise<ImageBitmap> => {
    const bitmap = await createImageBitmap(paint(cutOut(ofLevel(level), region), look));
    return transfer(bitmap, [bitmap]);
  },
  /** The window that suits this part of the film. */
  windowOn: (region: Region) => suggestWindow(cutOut(opened(), region)),
  /** The whole film through a look as a file that an image element can show. */
  pictureFile: async (look: Look): Promise<Blob> => {
    const data = paint(opened(), look);
    const canvas = new OffscreenCanvas(data.width, data.height);
    canvas.getContext('2d')?.putImageData(data, 0, 0);
    return canvas.convertToBlob({ type: 'image/png' });
  },
  /** The film in a photograph, squared up, as a file. */
  squared: ({ corners, filmMm }: SquareWish): Promise<Answer<Uint8Array>> =>
    answer(() => writePng(squareUp(opened(), corners, sizeOfFilm(corners, filmMm)))),
  scale: (calibration: TraceRequest['calibration']): Promise<Answer<Scale>> =>
    answer(() => calibrate(opened(), calibration)),
  /** The plan's rods near where they are expected. */
  pins: (expected: readonly ExpectedRod[], search: PinSearch) => findPins(opened(), expected, search),
  trace: (request: TraceRequest): Promise<Answer<Trace>> => answer(() => traceFilm(opened(), request)),
};

export type FilmJobs = typeof jobs;

expose(jobs);
