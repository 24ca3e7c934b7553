/**
 * The compiled codecs (JPEG to 16 bits, JPEG-LS, JPEG 2000) behind one function.
 * They run as WebAssembly; an instance that has thrown is left unusable, so it is dropped and the next frame gets a new one.
 */
import { InputError } from '@bonewright/fault';
import type { Context } from 'dcmjs-codecs';
import { EXPORT_AGAIN } from '../limits.ts';
import { CodecLog } from './codec-log.ts';
import type { FrameShape } from './stream-header.ts';

export type Codec = 'jpeg' | 'jpeg-ls' | 'jpeg-2000' | 'htj2k';

export interface CodedShape extends FrameShape {
  readonly bitsStored: number;
  readonly signed: boolean;
  readonly photometric: string;
  /** Colours are turned to RGB where they are not; otherwise they come as they are. */
  readonly toRgb?: boolean;
}

export interface DecodedFrame {
  /** Samples interleaved, little endian. */
  readonly bytes: Uint8Array;
  /** What the codec had to say, short of an error. */
  readonly remarks: readonly string[];
}

let wasmAddress: string | undefined;
const codecLog = new CodecLog();

/**
 * Tells where a browser finds the codecs' WebAssembly file; Node finds its own. Call it once, before the first film.
 * With Vite: `import wasmUrl from 'dcmjs-codecs/build/dcmjs-native-codecs.wasm?url'`.
 */
export function configureCodecs({ wasmUrl }: { readonly wasmUrl: string }): void {
  wasmAddress = wasmUrl;
}

/** Loads the codecs ahead of the first film that needs them. */
export async function prepareCodecs(): Promise<void> {
  await readyCodecs();
}

/** Decodes one frame. @throws InputError at `where` for damaged data. */
export async function decodeFrame(
  codec: Codec,
  encoded: Uint8Array,
  shape: CodedShape,
  where: string,
): Promise<DecodedFrame> {
  let codecs = await readyCodecs();
  // Another film may have dropped the instance between its being ready and now.
  while (!codecs.NativeCodecs.isInitialized()) codecs = await readyCodecs();
  const { NativeCodecs, Context } = codecs;
  const context = new Context({
    width: shape.cols,
    height: shape.rows,
    bitsAllocated: shape.bitsAllocated,
    bitsStored: shape.bitsStored,
    samplesPerPixel: shape.samples,
    pixelRepresentation: shape.signed ? 1 : 0,
    planarConfiguration: 0,
    photometricInterpretation: shape.photometric,
    encodedBuffer: encoded,
  });
  const decode: Record<Codec, (c: Context) => Context> = {
    jpeg: (c) => NativeCodecs.decodeJpeg(c, { convertColorspaceToRgb: shape.toRgb ?? false }),
    'jpeg-ls': (c) => NativeCodecs.decodeJpegLs(c),
    'jpeg-2000': (c) => NativeCodecs.decodeJpeg2000(c),
    htj2k: (c) => NativeCodecs.decodeHtJpeg2000(c),
  };
  codecLog.clear();
  try {
    const bytes = decode[codec](context).getDecodedBuffer();
    if (bytes && codecLog.lost === undefined) return { bytes, remarks: codecLog.remarks };
  } catch (error) {
    NativeCodecs.release();
    // A codec throws an error with a text, traps, or runs out of memory: whichever it is, the stream made it do so.
    if (!(error instanceof Error)) throw error;
    throw damaged(codecLog.lost ?? textOf(error), where);
  }
  throw damaged(codecLog.lost, where);
}

const textOf = (error: Error): string | undefined =>
  error instanceof WebAssembly.RuntimeError ? undefined : error.message;

const LONGEST_DETAIL = 120;

function damaged(detail: string | undefined, where: string): InputError {
  const words = detail ? ` (${detail.replace(/\s+/g, ' ').trim().slice(0, LONGEST_DETAIL)})` : '';
  return new InputError(`the compressed image data is damaged${words}`, where, EXPORT_AGAIN);
}

async function readyCodecs() {
  const { default: codecs } = await import('dcmjs-codecs');
  const { NativeCodecs, log } = codecs;
  if (!NativeCodecs.isInitialized()) {
    log.methodFactory = () => (said: unknown) => codecLog.note(String(said));
    log.setLevel('info', false);
    const address = wasmAddress;
    // Left to itself the library fetches by way of eval, which a strict content policy forbids.
    if (address !== undefined) Object.assign(NativeCodecs, { _getWebAssemblyBytes: () => fetchBytes(address) });
    await NativeCodecs.initializeAsync({ logCodecsInfo: true });
  }
  return codecs;
}

async function fetchBytes(address: string): Promise<ArrayBuffer> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`the codecs could not be fetched: status ${response.status}`);
  return response.arrayBuffer();
}
