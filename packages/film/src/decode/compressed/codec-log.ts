/** What the codecs say while they work: the one sign some of them give of data that was lost. */

/** JPEG codecs fill up a picture whose data ran out, and only warn (libjpeg's texts); openjpeg reports errors it then ignores. */
const LOST_DATA = /corrupt jpeg|premature end|inconsistent progression|CallbackError::/i;
/** libjpeg tells warnings and progress alike. */
const PROGRESS = /CallbackInfo::|EmitMessage::/;
const MOST_REMARKS = 3;

/** Gathers what is said between one frame and the next. */
export class CodecLog {
  #remarks: string[] = [];
  #lost: string | undefined;

  /** The first words on lost data, if there were any. */
  get lost(): string | undefined {
    return this.#lost;
  }

  get remarks(): readonly string[] {
    return this.#remarks;
  }

  clear(): void {
    this.#remarks = [];
    this.#lost = undefined;
  }

  note(said: string): void {
    const words = (said.split('::').at(-1) ?? '').replace(/\s+/g, ' ').trim();
    if (LOST_DATA.test(said)) this.#lost ??= words;
    else if (!PROGRESS.test(said) && this.#remarks.length < MOST_REMARKS) this.#remarks.push(words);
  }
}
