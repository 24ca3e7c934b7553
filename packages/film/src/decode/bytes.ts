/** Byte arrays laid end to end, read as text, and text out of a file made safe to show. */

/** Parts laid end to end; a single part is handed back as it is. */
export function joined(parts: readonly Uint8Array[]): Uint8Array {
  if (parts.length === 1 && parts[0]) return parts[0];
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** Bytes as Latin-1 text: one character a byte, nothing refused. */
export const latin1 = (bytes: Uint8Array): string => Array.from(bytes, (b) => String.fromCharCode(b)).join('');

export const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** Text safe to show: control characters and anything past 40 characters left out. */
export const printable = (value: string): string => value.replace(/[^\p{L}\p{N}\p{P}\p{S} ]/gu, '?').slice(0, 40);
