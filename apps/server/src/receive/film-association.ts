/**
 * One connection of an X-ray machine (PS3.7, PS3.8). The library speaks the protocol and would read films; here it only
 * hands on their bytes, and the answer waits until the film is kept. Nothing it calls here may throw: it would not catch.
 */
import type { Socket } from 'node:net';
import { PassThrough, type Writable } from 'node:stream';
import { InputError } from '@bonewright/fault';
import dimse, { type association, type requests, type responses } from 'dcmjs-dimse';
import { bestSyntax, isAccepted } from './accepted.ts';
import { fileHead } from './file-head.ts';
import { PduLengths } from './pdu-lengths.ts';
import { plain, type Refusal, refusalOf } from './refusal.ts';

const { PresentationContextResult, RejectReason, RejectResult, RejectSource, Status } = dimse.constants;
const { CEchoResponse, CStoreResponse } = dimse.responses;

/** What a connection needs from the one who listens. */
export interface FilmDesk {
  readonly title: string;
  /** Resolves when the film is safe; throws where it is not. */
  keep(film: AsyncIterable<Uint8Array>, sender: string): Promise<void>;
  say(words: string): void;
}

interface ArrivingFilm {
  readonly stream: PassThrough;
  /** Null when it is kept. */
  readonly refusal: Promise<Refusal | null>;
}

const AGREED_PDU_BYTES = 128 * 1024;
/** A machine's first message lists all it could send, before anything was agreed. */
const LONGEST_PDU_BYTES = 256 * 1024;
/** Above the longest message: the library would put a film's bytes out of order if its first message had to wait. */
const HELD_BYTES = 4 * LONGEST_PDU_BYTES;
/** Everything between two films: the library keeps it all in memory. */
const MOST_BYTES_BESIDE_FILMS = 256 * 1024;
const LONGEST_SILENCE_MS = 60_000;
const LONGEST_MESSAGE_MS = 10 * 60_000;
const LONGEST_COMMENT = 64;

export class FilmAssociation extends dimse.Scp {
  readonly #socket: Socket;
  readonly #desk: FilmDesk;
  readonly #lengths = new PduLengths(LONGEST_PDU_BYTES);
  #sender = 'an unnamed machine';
  #film: ArrivingFilm | null = null;
  #besideFilms = 0;
  #clock: NodeJS.Timeout | undefined;

  constructor(socket: Socket, desk: FilmDesk) {
    super(socket, { connectTimeout: LONGEST_SILENCE_MS });
    this.#socket = socket;
    this.#desk = desk;
    this.on('networkError', () => this.#end('it fell silent, or sent what no X-ray machine sends'));
    socket.on('data', (chunk: Buffer) => this.#watch(chunk));
    socket.once('close', () => {
      clearTimeout(this.#clock);
      this.#breakOff('the connection broke off before the film was whole');
    });
    this.#awaitMessage();
  }

  override associationRequested(asked: association.Association): void {
    this.#sender = plain(asked.getCallingAeTitle()) || this.#sender;
    try {
      if (asked.getCalledAeTitle() === this.#desk.title) this.#accept(asked);
      else this.#refuseTitle();
    } catch {
      this.#end('what it proposed could not be answered');
    }
  }

  override associationReleaseRequested(): void {
    this.sendAssociationReleaseResponse();
  }

  override abort(): void {
    this.#end('it gave up');
  }

  override cEchoRequest(request: requests.CEchoRequest, answer: (response: responses.CEchoResponse) => void): void {
    const response = CEchoResponse.fromRequest(request);
    response.setStatus(Status.Success);
    this.#awaitMessage();
    answer(response);
  }

  /** The library catches what is thrown here, and calls it a network error. */
  override createStoreWritableStream(
    context: association.PresentationContext,
    request: requests.CStoreRequest,
  ): Writable {
    const syntax = context.getAcceptedTransferSyntaxUid();
    if (context.getResult() !== PresentationContextResult.Accept || syntax === undefined || this.#film)
      throw new InputError('a film came that was not agreed on');
    const sopInstance = String(request.getAffectedSopInstanceUid());
    const head = fileHead({ sopClass: context.getAbstractSyntaxUid(), sopInstance, syntax });
    const stream = new PassThrough({ highWaterMark: HELD_BYTES });
    stream.on('error', () => undefined);
    stream.write(head);
    const film = { stream, refusal: this.#keep(stream) };
    this.#film = film;
    film.refusal.then((refusal) => {
      if (refusal && !stream.writableEnded) this.#end(refusal.words);
    });
    return stream;
  }

  /** The film itself stays out of the library: a data set in name only. */
  override createDatasetFromStoreWritableStream(
    _film: Writable,
    _context: association.PresentationContext,
    done: (nothing: dimse.Dataset) => void,
  ): void {
    done(new dimse.Dataset());
  }

  override cStoreRequest(request: requests.CStoreRequest, answer: (response: responses.CStoreResponse) => void): void {
    const response = CStoreResponse.fromRequest(request);
    const refusal = this.#film?.refusal ?? Promise.resolve(refusalOf(new InputError('no film came with the message')));
    clearTimeout(this.#clock);
    this.#socket.setTimeout(0);
    refusal
      .then((why) => {
        this.#film = null;
        this.#besideFilms = 0;
        response.setStatus(why?.status ?? Status.Success);
        if (why) response.setErrorComment(why.words.slice(0, LONGEST_COMMENT));
        if (this.#socket.destroyed) return;
        this.#awaitMessage();
        answer(response);
      })
      .catch(() => this.#end('it could not be answered'));
  }

  #accept(asked: association.Association): void {
    for (const { context } of asked.getPresentationContexts()) settle(context);
    asked.setMaxPduLength(AGREED_PDU_BYTES);
    this.sendAssociationAccept();
  }

  #keep(stream: PassThrough): Promise<Refusal | null> {
    return this.#desk.keep(stream, this.#sender).then(
      () => null,
      (error: unknown) => {
        const refusal = refusalOf(error);
        this.#desk.say(`a film from ${this.#sender} was refused: ${refusal.words}`);
        return refusal;
      },
    );
  }

  #watch(chunk: Buffer): void {
    const stream = this.#film?.stream;
    if (!this.#lengths.accept(chunk)) this.#end('it announced a message longer than any may be');
    else if (stream && !stream.writableEnded) this.#slowDown(stream);
    else this.#countBesideFilms(chunk.length);
  }

  #countBesideFilms(bytes: number): void {
    this.#besideFilms += bytes;
    if (this.#besideFilms > MOST_BYTES_BESIDE_FILMS) this.#end('it sent too much that is no film');
  }

  /** Lets the machine wait for the disk. */
  #slowDown(stream: PassThrough): void {
    if (!stream.writableNeedDrain) return;
    this.#socket.pause();
    stream.once('drain', () => this.#socket.resume());
  }

  #awaitMessage(): void {
    this.#socket.setTimeout(LONGEST_SILENCE_MS);
    clearTimeout(this.#clock);
    this.#clock = setTimeout(() => this.#end('nothing whole came in ten minutes'), LONGEST_MESSAGE_MS);
  }

  #refuseTitle(): void {
    this.#desk.say(`${this.#sender} called another title than ${this.#desk.title}: nothing was accepted`);
    this.sendAssociationReject(RejectResult.Permanent, RejectSource.ServiceUser, RejectReason.CalledAeNotRecognized);
  }

  #end(why: string): void {
    if (this.#socket.destroyed) return;
    if (!this.#breakOff(why)) this.#desk.say(`the connection of ${this.#sender} was ended: ${why}`);
    this.sendAbort();
    this.#socket.destroy();
  }

  /** Refuses a film that is not whole; false where none is on its way. */
  #breakOff(why: string): boolean {
    const stream = this.#film?.stream;
    if (!stream || stream.writableEnded) return false;
    stream.destroy(new InputError(why));
    return true;
  }
}

function settle(context: association.PresentationContext): void {
  const best = bestSyntax(context.getTransferSyntaxUids());
  const { Accept, RejectAbstractSyntaxNotSupported, RejectTransferSyntaxesNotSupported } = PresentationContextResult;
  if (!isAccepted(context.getAbstractSyntaxUid())) context.setResult(RejectAbstractSyntaxNotSupported, ANY_SYNTAX);
  else if (best === null) context.setResult(RejectTransferSyntaxesNotSupported, ANY_SYNTAX);
  else context.setResult(Accept, best);
}

/** Sent where nothing was accepted; its value means nothing there (PS3.8 9.3.3.2). */
const ANY_SYNTAX = dimse.constants.TransferSyntax.ImplicitVRLittleEndian;
