/** One section of a page of the documentation as plain text, without its heading; empty where there is none of that name. */
export function sectionOf(page: string, heading: string): string {
  const [, after = ''] = page.split(`\n## ${heading}\n`);
  const [section = ''] = after.split('\n## ');
  return section
    .trim()
    .split('\n')
    .filter((line) => !/^\|[\s|-]+$/.test(line))
    .map(asRow)
    .join('\n')
    .replaceAll(/\*\*|`/g, '');
}

/** A table's row as one line, its cells apart by a bar; any other line as it is. */
function asRow(line: string): string {
  if (!line.startsWith('|')) return line;
  return line
    .split('|')
    .map((cell) => cell.trim())
    .filter(Boolean)
    .join('  |  ');
}
