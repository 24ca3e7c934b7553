/** JSON text to a value, refusing what `JSON.parse` lets pass: a key twice, a number too large to hold. */
import { InputError } from '@bonewright/fault';
import { type JSONPath, type ParseError, printParseErrorCode, visit } from 'jsonc-parser';

const DEEPEST = 200;
const STRICT = { disallowComments: true, allowTrailingComma: false, allowEmptyContent: false };

/** Parses UTF-8 JSON; an InputError says what is wrong and where (byte or JSON path). */
export function readJson(bytes: Uint8Array): unknown {
  const text = decodeText(bytes);
  refuseTooDeep(text);
  refuseFaults(text);
  return JSON.parse(text);
}

function decodeText(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new InputError('this is not text in UTF-8', '', 'give a JSON file');
  }
}

function refuseTooDeep(text: string): void {
  let depth = 0;
  for (const c of text) {
    if (c === '[' || c === '{') depth += 1;
    if (c === ']' || c === '}') depth -= 1;
    if (depth > DEEPEST) throw new InputError(`the JSON is nested deeper than ${DEEPEST}`, '', 'flatten it');
  }
}

function refuseFaults(text: string): void {
  const open: Set<string>[] = [];
  const dotted = (path: JSONPath) => path.join('.');
  visit(
    text,
    {
      onObjectBegin: () => void open.push(new Set()),
      onObjectEnd: () => void open.pop(),
      onObjectProperty: (name, _offset, _length, _line, _char, path) => {
        const keys = open.at(-1);
        if (keys?.has(name)) {
          throw new InputError(`the key "${name}" stands twice`, dotted([...path(), name]), 'keep one of them');
        }
        keys?.add(name);
      },
      onLiteralValue: (value, offset, length, _line, _char, path) => {
        if (typeof value !== 'number' || Number.isFinite(value)) return;
        const written = text.slice(offset, offset + length);
        throw new InputError(`the number ${written} is too large`, dotted(path()), 'give a finite number');
      },
      onError: (error: ParseError['error'], offset, _length, line, char) => {
        const what = words(printParseErrorCode(error), text);
        throw new InputError(
          what,
          `byte ${Buffer.byteLength(text.slice(0, offset))} (line ${line + 1}, column ${char + 1})`,
          'mend the JSON',
        );
      },
    },
    STRICT,
  );
}

function words(code: string, text: string): string {
  if (text.trim() === '') return 'the file is empty';
  return `this is not JSON (${code.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase()})`;
}
