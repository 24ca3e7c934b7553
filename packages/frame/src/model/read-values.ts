/** Guards for single values of a parsed JSON document; each fault names the value and its dotted path. */
import { InputError } from '@bonewright/fault';
import type { Vec3, Vec6 } from './frame-model.ts';

type Json = Readonly<Record<string, unknown>>;

/** A JSON object. */
export function readObject(value: unknown, path: string): Json {
  if (!isObject(value)) throw new InputError(`${shown(value)} stands where an object is needed`, path, 'write { ... }');
  return value;
}

const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Refuses a key that means nothing here (it is most often a slip); text is let pass as a note. */
export function refuseOtherKeys(object: Json, known: readonly string[], path: string): void {
  for (const [key, value] of Object.entries(object)) {
    if (known.includes(key) || typeof value === 'string') continue;
    throw new InputError(`the key "${key}" is unknown here`, under(path, key), `use ${known.join(', ')}`);
  }
}

/** Every entry of a named group, read by `read`; a group that is left out is empty. */
export function readGroup<T>(
  group: unknown,
  path: string,
  read: (value: unknown, path: string, name: string) => T,
): Record<string, T> {
  if (group === undefined) return {};
  const entries = Object.entries(readObject(group, path));
  return Object.fromEntries(entries.map(([name, value]) => [name, read(value, under(path, name), name)]));
}

export function readNumber(value: unknown, path: string): number {
  if (typeof value === 'number' && Number.isFinite(value)) return value;
  throw new InputError(`${shown(value)} is not a finite number`, path, 'give a plain number');
}

export function readPositive(value: unknown, path: string): number {
  const number = readNumber(value, path);
  if (number > 0) return number;
  throw new InputError(`${number} is not above 0`, path, 'give a size above 0');
}

export function readNotNegative(value: unknown, path: string): number {
  const number = readNumber(value, path);
  if (number >= 0) return number;
  throw new InputError(`${number} is negative`, path, 'give 0 or more');
}

export function readText(value: unknown, path: string): string {
  if (typeof value === 'string') return value;
  throw new InputError(`${shown(value)} is not text`, path, 'give a text in quotes');
}

export function readBoolean(value: unknown, path: string): boolean {
  if (typeof value === 'boolean') return value;
  throw new InputError(`${shown(value)} is neither true nor false`, path, 'give true or false');
}

/** One of a list of words. */
export function readChoice<T extends string>(value: unknown, path: string, choices: readonly T[]): T {
  const found = choices.find((choice) => choice === value);
  if (found !== undefined) return found;
  throw new InputError(`${shown(value)} is not known`, path, `use ${choices.join(', ')}`);
}

export function readList(value: unknown, path: string): readonly unknown[] {
  if (Array.isArray(value)) return value;
  throw new InputError(`${shown(value)} stands where a list is needed`, path, 'write [ ... ]');
}

export function readVec3(value: unknown, path: string): Vec3 {
  const at = numbersOf(value, path, 3);
  return [at(0), at(1), at(2)];
}

export function readVec6(value: unknown, path: string): Vec6 {
  const at = numbersOf(value, path, 6);
  return [at(0), at(1), at(2), at(3), at(4), at(5)];
}

/** A vector that points somewhere; its length does not matter. */
export function readDirection(value: unknown, path: string): Vec3 {
  const vector = readVec3(value, path);
  const largest = Math.max(...vector.map(Math.abs));
  if (largest > 0) return [vector[0] / largest, vector[1] / largest, vector[2] / largest];
  throw new InputError('a direction of no length points nowhere', path, 'give a vector other than 0, 0, 0');
}

function numbersOf(value: unknown, path: string, count: number): (index: number) => number {
  const list = readList(value, path);
  if (list.length !== count) {
    throw new InputError(`${list.length} numbers stand where ${count} are needed`, path, `give ${count} numbers`);
  }
  return (index) => readNumber(list[index], under(path, String(index)));
}

export const under = (path: string, key: string): string => (path ? `${path}.${key}` : key);

/** A value as a reader of an error line can recognise it. */
function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  const text = typeof value === 'number' ? String(value) : JSON.stringify(value);
  return text.length > 40 ? `${text.slice(0, 40)}...` : text;
}
