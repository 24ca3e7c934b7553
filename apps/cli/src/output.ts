/** One JSON document to standard output; a number that is not finite is a fault of ours, never printed. */
export function print(document: unknown): void {
  process.stdout.write(`${JSON.stringify(document, refuseNonFinite)}\n`);
}

function refuseNonFinite(key: string, value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`"${key}" came out as ${value}`);
  return value;
}
