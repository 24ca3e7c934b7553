/** The page of a case bundle: the case in words and pictures, for a browser without Bonewright. No script, no address outside. */
import { bundlePath, type CaseState, filesNamed, type RecordedEvent, sentenceOf } from '@bonewright/casebook';

const STYLE =
  'body{font:1rem/1.5 Georgia,serif;max-width:46rem;margin:2rem auto;padding:0 1rem;color:#222;background:#fffdf8}' +
  'li{margin:.6rem 0}.who{color:#555;font-size:.9rem}img{max-width:100%;display:block;margin:.4rem 0}' +
  'h1{font-size:1.6rem}h2{font-size:1.2rem;border-bottom:1px solid #aaa}';
const POLICY = "default-src 'none'; img-src 'self' file:; style-src 'unsafe-inline'";
const isPicture = (path: string): boolean => /\.(?:png|jpe?g)$/.test(path);

export function bundlePage(
  { patient }: CaseState,
  events: readonly RecordedEvent[],
  papers: readonly string[],
): string {
  const { number = '', species = '', bone = '', side = '' } = patient?.value ?? {};
  const title = escaped(`${number}: ${species}, ${side} ${bone}`);
  const links = papers.map((path) => `<li><a href="${path}">${escaped(path)}</a></li>`).join('');
  return [
    '<!doctype html><html lang="en"><head><meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${POLICY}">`,
    '<meta name="viewport" content="width=device-width,initial-scale=1">',
    `<title>${title}</title><style>${STYLE}</style></head><body><main><h1>${title}</h1>`,
    '<p>A copy of this case. It decides nothing: whoever treats the patient checks it against the patient. ',
    'The record itself is in <a href="events.json">events.json</a>, the hashes are in <a href="manifest.json">manifest.json</a>.</p>',
    links ? `<h2>Papers</h2><ul>${links}</ul>` : '',
    `<h2>What happened</h2><ol>${events.map(line).join('\n')}</ol></main></body></html>\n`,
  ].join('');
}

function line(event: RecordedEvent): string {
  const files = filesNamed(event).map((file) => shown(bundlePath(file), escaped(file.fileName)));
  const who = `<span class="who">${escaped(event.at)}, ${escaped(event.by)}</span>`;
  return `<li>${who}<br>${escaped(sentenceOf(event))}${files.join('')}</li>`;
}

const shown = (path: string, name: string): string =>
  isPicture(path) ? `<img src="${path}" alt="${name}">` : ` <a href="${path}">${name}</a>`;

const ESCAPES: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => ESCAPES[sign] ?? '');
