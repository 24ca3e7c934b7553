/**
 * Passwords as scrypt hashes. Cost: OWASP Password Storage Cheat Sheet, scrypt N = 2^17, r = 8 (1024 bytes), p = 1;
 * 128 MiB and some 0.3 s each, so few are worked out at a time.
 */
import { randomBytes, type ScryptOptions, scrypt, timingSafeEqual } from 'node:crypto';
import { promisify } from 'node:util';
import { ID_BYTES, idFrom } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';

export interface PasswordCost {
  readonly N: number;
  readonly r: number;
  readonly p: number;
}

export const OWASP_SCRYPT: PasswordCost = { N: 2 ** 17, r: 8, p: 1 };
/** OWASP ASVS 4.0.3, 2.1.1 and 2.1.2: 12 characters at least, 64 must be taken, more than 128 are not. */
const SHORTEST = 12;
const LONGEST = 128;
const FEWEST_DIFFERENT = 5;
const SALT_BYTES = 16;
const KEY_BYTES = 32;
const AT_ONCE = 2;
/** Twice what the cost above takes: Node's own limit lies below it. */
const MOST_MEMORY_BYTES = 256 * 1024 * 1024;
const HANDED_OVER_LENGTH = 16;

const derive: (password: string, salt: Buffer, keyBytes: number, options: ScryptOptions) => Promise<Buffer> =
  promisify(scrypt);

/** Throws InputError where a password is too easily guessed, with what would do. */
export function requireGoodPassword(password: string, name: string): void {
  const refuse = (what: string) => {
    throw new InputError(
      what,
      'password',
      `take ${SHORTEST} characters or more: three or four words of your own do well`,
    );
  };
  const length = [...password].length;
  if (length < SHORTEST) refuse(`the password has ${length} characters`);
  if (length > LONGEST) refuse(`the password is longer than ${LONGEST} characters`);
  if (new Set(password).size < FEWEST_DIFFERENT) refuse('the password repeats itself');
  const plain = password.toLowerCase();
  if (plain.includes('bonewright') || plain.includes(name.toLowerCase()))
    refuse('the password holds a name that anybody knows');
}

/** A password to hand over once: 16 letters and digits (80 bits) in groups of four. */
export function handedOverPassword(): string {
  const letters = idFrom(randomBytes(ID_BYTES)).slice(0, HANDED_OVER_LENGTH);
  return (letters.match(/.{4}/g) ?? []).join('-');
}

export class Passwords {
  readonly #cost: PasswordCost;
  #working = 0;
  readonly #waiting: (() => void)[] = [];

  constructor(cost: PasswordCost = OWASP_SCRYPT) {
    this.#cost = cost;
  }

  /** `scrypt$N$r$p$salt$key`, the last two in base64. */
  async hash(password: string): Promise<string> {
    const salt = randomBytes(SALT_BYTES);
    const { N, r, p } = this.#cost;
    const key = await this.#derive(password, salt, this.#cost);
    return ['scrypt', N, r, p, salt.toString('base64'), key.toString('base64')].join('$');
  }

  /** Takes as long for somebody who does not exist (null) as for one who does. */
  async isRight(password: string, hash: string | null): Promise<boolean> {
    const [, N, r, p, salt = '', key = ''] = (hash ?? '').split('$');
    const cost = hash === null ? this.#cost : { N: Number(N), r: Number(r), p: Number(p) };
    const derived = await this.#derive(password, Buffer.from(salt, 'base64'), cost);
    const kept = Buffer.from(key, 'base64');
    return kept.length === derived.length && timingSafeEqual(kept, derived);
  }

  async #derive(password: string, salt: Buffer, { N, r, p }: PasswordCost): Promise<Buffer> {
    while (this.#working >= AT_ONCE) await new Promise<void>((go) => this.#waiting.push(go));
    this.#working += 1;
    try {
      return await derive(password.normalize('NFKC'), salt, KEY_BYTES, { N, r, p, maxmem: MOST_MEMORY_BYTES });
    } finally {
      this.#working -= 1;
      this.#waiting.shift()?.();
    }
  }
}
