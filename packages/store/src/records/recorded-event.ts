/** The event that a stored text holds. A text that holds none is damage on our side, not bad input. */
export function recordedEvent<R>(body: string, read: (json: unknown) => R): R {
  try {
    return read(JSON.parse(body));
  } catch (cause) {
    throw new Error('a recorded event cannot be read; run verify', { cause });
  }
}
