/** Tables as RFC 4180 wants them: lines end with CR LF, cells are quoted where they must be. */

export function csvOf(lines: readonly (readonly (string | number)[])[]): string {
  return lines.map((cells) => `${cells.map(cell).join(',')}\r\n`).join('');
}

/** Quoted where it must be; a leading sign that a spreadsheet would work out is disarmed. */
function cell(value: string | number): string {
  const text = String(value);
  const plain = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
