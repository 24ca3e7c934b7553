/** An X-ray machine for tests, byte by byte (PS3.7 annex E, PS3.8 section 9.3), so that it can also misbehave. */
import { once } from 'node:events';
import { connect, type Socket } from 'node:net';

export const CR = '1.2.840.10008.5.1.4.1.1.1';
export const EXPLICIT = '1.2.840.10008.1.2.1';
const C_STORE = 0x0001;
const C_ECHO = 0x0030;
const NO_DATA_SET = 0x0101;

export interface Proposal {
  readonly id: number;
  readonly sopClass: string;
  readonly syntaxes: readonly string[];
}

export interface Pdu {
  readonly type: number;
  readonly body: Buffer;
}

export class Machine {
  readonly socket: Socket;
  #received = Buffer.alloc(0);
  #wake = (): void => undefined;

  constructor(socket: Socket) {
    this.socket = socket;
    socket.on('error', () => undefined);
    socket.on('data', (chunk: Buffer) => {
      this.#received = Buffer.concat([this.#received, chunk]);
      this.#wake();
    });
    socket.on('close', () => this.#wake());
  }

  static async on(port: number): Promise<Machine> {
    const socket = connect(port, '127.0.0.1');
    await once(socket, 'connect');
    return new Machine(socket);
  }

  /** Connected, and whatever is proposed agreed on. */
  static async ready(port: number, proposals: readonly Proposal[] = [{ id: 1, sopClass: CR, syntaxes: [EXPLICIT] }]) {
    const machine = await Machine.on(port);
    const answer = await machine.propose('THEATRE', proposals);
    if (answer?.type !== 2) throw new Error('the proposal was not accepted');
    return machine;
  }

  propose(called: string, proposals: readonly Proposal[]): Promise<Pdu | null> {
    const contexts = proposals.map(({ id, sopClass, syntaxes }) => {
      const inside = [item(0x30, Buffer.from(sopClass)), ...syntaxes.map((uid) => item(0x40, Buffer.from(uid)))];
      return item(0x20, Buffer.concat([Buffer.of(id, 0, 0, 0), ...inside]));
    });
    const most = Buffer.alloc(4);
    most.writeUInt32BE(16384);
    const titles = Buffer.from(called.padEnd(16) + 'XRAY1'.padEnd(16));
    const application = item(0x10, Buffer.from('1.2.840.10008.3.1.1.1'));
    const head = [Buffer.of(0, 1, 0, 0), titles, Buffer.alloc(32), application];
    this.send(0x01, Buffer.concat([...head, ...contexts, item(0x50, item(0x51, most))]));
    return this.answer();
  }

  send(type: number, body: Uint8Array, length = body.length): void {
    const head = Buffer.of(type, 0, 0, 0, 0, 0);
    head.writeUInt32BE(length, 2);
    this.socket.write(Buffer.concat([head, body]));
  }

  /** One message of data made of these fragments. */
  data(...fragments: readonly Uint8Array[]): void {
    this.send(0x04, Buffer.concat(fragments));
  }

  store(id: number, sopInstance: string): void {
    this.data(fragment(id, command({ field: C_STORE, sopClass: CR, sopInstance }), 'command', 'last'));
  }

  sendFilm(dataSet: Uint8Array, { id = 1, size = 16_000, sopInstance = '2.25.7' } = {}): void {
    this.store(id, sopInstance);
    for (let at = 0; at < dataSet.length; at += size) {
      const isLast = at + size >= dataSet.length;
      this.data(fragment(id, dataSet.subarray(at, at + size), 'data', isLast ? 'last' : 'more'));
    }
  }

  /** Sends a film and reads the status in the answer; null where the connection was ended instead. */
  film(dataSet: Uint8Array): Promise<number | null> {
    this.sendFilm(dataSet);
    return this.status();
  }

  async echo(id = 1): Promise<number | null> {
    this.data(fragment(id, command({ field: C_ECHO, sopClass: '1.2.840.10008.1.1' }), 'command', 'last'));
    return this.status();
  }

  async status(): Promise<number | null> {
    const answer = await this.answer();
    if (answer?.type !== 0x04) return null;
    const at = answer.body.indexOf(Buffer.of(0, 0, 0, 9, 2, 0, 0, 0));
    return answer.body.readUInt16LE(at + 8);
  }

  /** The next message; null where the connection was ended instead. */
  async answer(): Promise<Pdu | null> {
    while (!this.#isWhole()) {
      if (this.socket.closed) return null;
      await new Promise<void>((wake) => {
        this.#wake = wake;
      });
    }
    const end = 6 + this.#received.readUInt32BE(2);
    const [whole, rest] = [this.#received.subarray(0, end), this.#received.subarray(end)];
    this.#received = rest;
    return { type: whole[0] ?? 0, body: whole.subarray(6) };
  }

  leave(): void {
    this.socket.destroy();
  }

  #isWhole(): boolean {
    return this.#received.length >= 6 && this.#received.length >= 6 + this.#received.readUInt32BE(2);
  }
}

function item(type: number, value: Uint8Array): Buffer {
  const head = Buffer.of(type, 0, 0, 0);
  head.writeUInt16BE(value.length, 2);
  return Buffer.concat([head, value]);
}

export function fragment(id: number, bytes: Uint8Array, kind: 'command' | 'data', place: 'last' | 'more'): Buffer {
  const head = Buffer.alloc(6);
  head.writeUInt32BE(bytes.length + 2);
  head[4] = id;
  head[5] = (kind === 'command' ? 1 : 0) | (place === 'last' ? 2 : 0);
  return Buffer.concat([head, bytes]);
}

function command({ field, sopClass, sopInstance }: { field: number; sopClass: string; sopInstance?: string }): Buffer {
  return Buffer.concat([
    text(0x0002, sopClass),
    number(0x0100, field),
    number(0x0110, 1),
    number(0x0700, 0),
    number(0x0800, sopInstance === undefined ? NO_DATA_SET : 1),
    ...(sopInstance === undefined ? [] : [text(0x1000, sopInstance)]),
  ]);
}

const text = (element: number, value: string): Buffer =>
  group0(element, Buffer.from(value.length % 2 ? `${value}\0` : value));

function number(element: number, value: number): Buffer {
  const bytes = Buffer.alloc(2);
  bytes.writeUInt16LE(value);
  return group0(element, bytes);
}

/** Group 0000, Implicit VR Little Endian. */
function group0(element: number, value: Buffer): Buffer {
  const head = Buffer.alloc(8);
  head.writeUInt16LE(element, 2);
  head.writeUInt32LE(value.length, 4);
  return Buffer.concat([head, value]);
}
