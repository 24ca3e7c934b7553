/**
 * Bad input, as data first and one line of text last: what is wrong, where, what to do.
 * Every package throws this for bad input and nothing else; anything else that is thrown is a fault of ours.
 */
export class InputError extends Error {
  override readonly name = 'InputError';
  /** What is wrong: the thing, its value, the limit it breaks. */
  readonly what: string;
  /** Where: a dotted JSON path (`sections.bone.id`), a byte, a form field; empty for the whole file. */
  readonly path: string;
  /** What to do about it, as an instruction; empty where nothing but another file helps. */
  readonly hint: string;

  constructor(what: string, path = '', hint = '') {
    super([what, path && `at ${path}`, hint].filter(Boolean).join('; '));
    this.what = what;
    this.path = path;
    this.hint = hint;
  }
}

/** The one line a command line or a form shows: `what, at FILE PATH; hint`. */
export function faultLine(error: InputError, file = ''): string {
  const where = [file, error.path].filter(Boolean).join(' ');
  const line = [error.what + (where ? `, at ${where}` : ''), error.hint].filter(Boolean).join('; ');
  return line.replace(/\s+/g, ' ').trim();
}
