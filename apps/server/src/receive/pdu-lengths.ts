/** Follows the messages of a DICOM connection (PS3.8 section 9.3) by their lengths alone: the library has no limit of its own. */
const HEAD_BYTES = 6;
const LENGTH_AT = 2;

export class PduLengths {
  readonly #longest: number;
  readonly #head = new DataView(new ArrayBuffer(HEAD_BYTES));
  #inHead = 0;
  #left = 0;

  constructor(longest: number) {
    this.#longest = longest;
  }

  /** Takes what arrived next; false once a message says it will be longer than allowed. */
  accept(bytes: Uint8Array): boolean {
    for (let at = 0; at < bytes.length; ) {
      if (this.#left > 0) {
        const step = Math.min(this.#left, bytes.length - at);
        this.#left -= step;
        at += step;
        continue;
      }
      this.#head.setUint8(this.#inHead++, bytes[at++]!);
      if (this.#inHead < HEAD_BYTES) continue;
      this.#inHead = 0;
      this.#left = this.#head.getUint32(LENGTH_AT);
      if (this.#left > this.#longest) return false;
    }
    return true;
  }
}
