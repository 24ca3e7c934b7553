/**
 * A PDF in millimetres from the page's top left corner: fonts embedded, tagged, black and white.
 * Everything a sheet draws goes through here, so that 1 mm is 1 mm.
 */
import { createRequire } from 'node:module';
import PDFDocument from 'pdfkit';

export const PT_PER_MM = 72 / 25.4;
const MARGIN_MM = 12;
const PAGES = { A4: [210, 297], Letter: [215.9, 279.4] } as const;
export type PageSize = keyof typeof PAGES;

const FONTS = {
  regular: '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf',
  strong: '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf',
  bold: '@expo-google-fonts/source-sans-3/700Bold/SourceSans3_700Bold.ttf',
  heading: '@expo-google-fonts/literata/600SemiBold/Literata_600SemiBold.ttf',
} as const;
export type Face = keyof typeof FONTS;

export type Point = readonly [xMm: number, yMm: number];

export interface Ink {
  /** Line weight, mm; absent: no outline. */
  readonly line?: number;
  readonly dash?: readonly number[];
  readonly fill?: 'white' | 'black' | 'grey';
  /** Colour of the line; black unless said. */
  readonly grey?: boolean;
  readonly white?: boolean;
}

export interface Words {
  readonly face?: Face;
  /** Type size in points. */
  readonly size?: number;
  readonly align?: 'left' | 'center' | 'right';
  readonly grey?: boolean;
  /** Wraps within this width, mm. */
  readonly width?: number;
}

const SHADE = { white: '#FFFFFF', black: '#000000', grey: '#9A9A9A' } as const;
const DARK_GREY = '#333333';

export interface PaperFacts {
  readonly title: string;
  readonly size: PageSize;
  /** Fixed when files are compared; the time of printing otherwise. */
  readonly made: Date;
}

export class Paper {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly left = MARGIN_MM;
  readonly top = MARGIN_MM;
  readonly right: number;
  readonly bottom: number;
  private readonly doc: PDFKit.PDFDocument;
  private readonly chunks: Uint8Array[] = [];
  private readonly ended: Promise<Uint8Array>;

  constructor(facts: PaperFacts) {
    [this.widthMm, this.heightMm] = PAGES[facts.size];
    this.right = this.widthMm - MARGIN_MM;
    this.bottom = this.heightMm - MARGIN_MM;
    this.doc = new PDFDocument({
      size: [this.widthMm * PT_PER_MM, this.heightMm * PT_PER_MM],
      margin: 0,
      autoFirstPage: false,
      tagged: true,
      lang: 'en-GB',
      displayTitle: true,
      pdfVersion: '1.7',
      subset: 'PDF/UA' as PDFKit.PDFDocumentOptions['subset'] & string,
      info: { Title: facts.title, Creator: 'Bonewright', CreationDate: facts.made },
    });
    const require = createRequire(import.meta.url);
    for (const [face, file] of Object.entries(FONTS)) this.doc.registerFont(face, require.resolve(file));
    this.ended = new Promise((resolve, reject) => {
      this.doc.on('data', (chunk: Uint8Array) => this.chunks.push(chunk));
      this.doc.on('end', () => resolve(Buffer.concat(this.chunks)));
      this.doc.on('error', reject);
    });
  }

  page(): void {
    this.doc.addPage();
  }

  /** Closes the file and gives its bytes. */
  async finish(): Promise<Uint8Array> {
    this.doc.end();
    return this.ended;
  }

  /** Adds a tagged part: a heading or paragraph of words, or a figure with its description. */
  part(kind: 'H1' | 'H2' | 'P' | 'Figure' | 'Table', draw: () => void, alt?: string): void {
    const options = alt ? { alt } : {};
    const part = this.doc.struct(kind, options, draw);
    this.doc.addStructure(part);
    part.end();
  }

  /** Draws what a screen reader passes over: rules, frames, bars. */
  decoration(draw: () => void): void {
    this.doc.markContent('Artifact', { type: 'Layout' });
    draw();
    this.doc.endMarkedContent();
  }

  text(text: string, [x, y]: Point, words: Words = {}): void {
    const { face = 'regular', size = 9.5, align = 'left', grey = false } = words;
    this.doc
      .font(face)
      .fontSize(size)
      .fillColor(grey ? DARK_GREY : SHADE.black);
    const width = (words.width ?? this.textWidth(text, words) + 1) * PT_PER_MM;
    const shift = words.width || align === 'left' ? 0 : align === 'right' ? width : width / 2;
    this.doc.text(text, x * PT_PER_MM - shift, y * PT_PER_MM, {
      width,
      align,
      lineBreak: words.width !== undefined,
      lineGap: 1,
    });
  }

  /** Width of one line of words, mm. */
  textWidth(text: string, { face = 'regular', size = 9.5 }: Words = {}): number {
    return this.doc.font(face).fontSize(size).widthOfString(text) / PT_PER_MM;
  }

  /** Height of words wrapped in a width, mm. */
  textHeight(text: string, { face = 'regular', size = 9.5, width = 100 }: Words = {}): number {
    this.doc.font(face).fontSize(size);
    return this.doc.heightOfString(text, { width: width * PT_PER_MM, lineGap: 1 }) / PT_PER_MM;
  }

  line(from: Point, to: Point, lineMm = 0.18, dash: readonly number[] = []): void {
    this.path([from, to], { line: lineMm, dash });
  }

  path(points: readonly Point[], ink: Ink, closed = false): void {
    const [first, ...rest] = points;
    if (!first) return;
    this.doc.moveTo(first[0] * PT_PER_MM, first[1] * PT_PER_MM);
    for (const [x, y] of rest) this.doc.lineTo(x * PT_PER_MM, y * PT_PER_MM);
    if (closed) this.doc.closePath();
    this.paint(ink);
  }

  rect([x, y]: Point, widthMm: number, heightMm: number, ink: Ink, radiusMm = 0): void {
    const box = [x, y, widthMm, heightMm].map((v) => v * PT_PER_MM) as [number, number, number, number];
    if (radiusMm > 0) this.doc.roundedRect(...box, radiusMm * PT_PER_MM);
    else this.doc.rect(...box);
    this.paint(ink);
  }

  ellipse([x, y]: Point, rxMm: number, ryMm: number, ink: Ink): void {
    this.doc.ellipse(x * PT_PER_MM, y * PT_PER_MM, rxMm * PT_PER_MM, ryMm * PT_PER_MM);
    this.paint(ink);
  }

  /** Hatches the inside of a closed outline at 45 degrees. */
  hatch(outline: readonly Point[], gapMm = 1.5, lineMm = 0.15): void {
    const xs = outline.map((p) => p[0]);
    const ys = outline.map((p) => p[1]);
    const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    this.doc.save();
    outline.forEach(([x, y], i) => {
      if (i === 0) this.doc.moveTo(x * PT_PER_MM, y * PT_PER_MM);
      else this.doc.lineTo(x * PT_PER_MM, y * PT_PER_MM);
    });
    this.doc.closePath().clip();
    for (let c = x0 - (y1 - y0); c < x1; c += gapMm * Math.SQRT2) this.line([c, y1], [c + (y1 - y0), y0], lineMm);
    this.doc.restore();
  }

  /** Draws with its own clip and state. */
  within(outline: readonly Point[], draw: () => void): void {
    this.doc.save();
    outline.forEach(([x, y], i) => {
      if (i === 0) this.doc.moveTo(x * PT_PER_MM, y * PT_PER_MM);
      else this.doc.lineTo(x * PT_PER_MM, y * PT_PER_MM);
    });
    this.doc.closePath().clip();
    draw();
    this.doc.restore();
  }

  private paint({ line, dash = [], fill, grey = false, white = false }: Ink): void {
    const stroke = white ? SHADE.white : grey ? SHADE.grey : SHADE.black;
    if (line !== undefined) {
      this.doc
        .lineWidth(line * PT_PER_MM)
        .strokeColor(stroke)
        .lineCap('butt')
        .lineJoin('round');
      if (dash.length > 0) this.doc.dash(dash[0]! * PT_PER_MM, { space: (dash[1] ?? dash[0]!) * PT_PER_MM });
      else this.doc.undash();
    }
    if (fill && line !== undefined) this.doc.fillAndStroke(SHADE[fill], stroke);
    else if (fill) this.doc.fill(SHADE[fill]);
    else this.doc.stroke();
  }
}
