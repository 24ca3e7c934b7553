/** An unknown value to a checked case: shape by schema, then what a schema cannot say. Bad input is an InputError. */
import { InputError } from '@bonewright/fault';
import type { z } from 'zod';
import { type Case, caseFileSchema } from './model/case-file.ts';
import { checkCase } from './model/case-rules.ts';

/** Reads a case from a file or form. Throws InputError with a JSON path (`drawer.pins.0.gauge`) and what to do. */
export function readCase(value: unknown): Case {
  const read = caseFileSchema.safeParse(value);
  if (!read.success) throw shapeFault(read.error.issues[0]!, value);
  checkCase(read.data);
  return read.data;
}

function shapeFault(issue: z.core.$ZodIssue, value: unknown): InputError {
  const found = deepest(issue);
  const path = found.path.join('.');
  const received = valueAt(value, found.path);
  const seen = received === undefined ? 'it is missing' : `it is ${shown(received)}`;
  const name = path === '' ? 'the case' : `"${String(found.path.at(-1))}"`;
  return new InputError(`${name} is not right, ${seen}`, path, hintOf(found));
}

/** In a union the branch that went furthest says best what is meant. */
function deepest(issue: z.core.$ZodIssue): z.core.$ZodIssue {
  if (issue.code !== 'invalid_union') return issue;
  const inner = issue.errors
    .flat()
    .map((e) => ({ ...e, path: [...issue.path, ...e.path] }))
    .sort((a, b) => b.path.length - a.path.length)[0];
  return inner ? deepest(inner) : issue;
}

function hintOf(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return `give ${withArticle(issue.expected)}`;
    case 'too_small':
      return `give ${issue.inclusive === false ? 'more than' : 'at least'} ${issue.minimum}`;
    case 'too_big':
      return `give ${issue.inclusive === false ? 'less than' : 'at most'} ${issue.maximum}`;
    case 'invalid_value':
      return `give one of ${issue.values.map(String).join(', ')}`;
    case 'unrecognized_keys':
      return `leave out ${issue.keys.map((k) => `"${k}"`).join(', ')}`;
    default:
      return issue.message;
  }
}

const withArticle = (noun: string): string =>
  noun === 'array' ? 'a list' : noun === 'tuple' ? 'a list' : `${/^[aeio]/.test(noun) ? 'an' : 'a'} ${noun}`;

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  let at: unknown = value;
  for (const key of path) {
    if (typeof at !== 'object' || at === null) return undefined;
    at = (at as Readonly<Record<PropertyKey, unknown>>)[key];
  }
  return at;
}

const LONGEST = 40;

function shown(value: unknown): string {
  if (typeof value === 'number') return String(value);
  const text = JSON.stringify(value) ?? typeof value;
  return text.length > LONGEST ? `${text.slice(0, LONGEST)}...` : text;
}
