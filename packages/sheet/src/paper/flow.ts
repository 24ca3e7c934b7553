/** Text and tables poured down the page, on to the next where it is full. Every page gets its running head and foot. */
import type { Face, Paper, Words } from './paper.ts';

export interface Column {
  readonly heading: string;
  /** Share of the page's width. */
  readonly share: number;
  readonly align?: 'left' | 'right';
}

export interface Running {
  readonly head: (paper: Paper) => number;
  readonly foot: (paper: Paper, page: number) => number;
}

const TEXT = { size: 9.5 };
const CELL: Words = { size: 8.5 };
const GAP_MM = 2;

export class Flow {
  private y = 0;
  private page = 0;
  private floor = 0;
  private readonly paper: Paper;
  private readonly running: Running;

  constructor(paper: Paper, running: Running) {
    this.paper = paper;
    this.running = running;
    this.turn();
  }

  heading(words: string): void {
    this.need(16);
    this.y += 3;
    const { paper, y } = this;
    paper.part('H2', () => paper.text(words, [paper.left, y], { face: 'heading', size: 13 }));
    paper.decoration(() => paper.line([paper.left, y + 7], [paper.right, y + 7], 0.5));
    this.y += 8.5;
  }

  paragraph(
    words: string,
    { size = TEXT.size, face = 'regular' }: { readonly size?: number; readonly face?: Face } = {},
  ): void {
    const style = { size, face, width: this.paper.right - this.paper.left };
    const height = this.paper.textHeight(words, style);
    this.need(height + GAP_MM);
    const { paper, y } = this;
    paper.part('P', () => paper.text(words, [paper.left, y], style));
    this.y += height + GAP_MM;
  }

  /** A table of words; a row never breaks across pages, its headings stand again on a new one. */
  table(columns: readonly Column[], rows: readonly (readonly string[])[]): void {
    const places = placed(columns, this.paper);
    this.headings(columns, places);
    for (const row of rows) {
      const height = Math.max(4.4, ...row.map((cell, i) => this.paper.textHeight(cell, cellWords(places[i]!)))) + 1.2;
      if (this.need(height)) this.headings(columns, places);
      const { paper, y } = this;
      row.forEach((cell, i) => {
        if (cell) paper.part('P', () => paper.text(cell, [places[i]!.x, y + 0.4], cellWords(places[i]!)));
      });
      this.y += height;
      paper.decoration(() => paper.line([paper.left, this.y], [paper.right, this.y], 0.15));
    }
    this.y += GAP_MM;
  }

  /** Room for something drawn by hand; gives the y where it may begin. */
  room(heightMm: number): number {
    this.need(heightMm);
    const at = this.y;
    this.y += heightMm;
    return at;
  }

  private headings(columns: readonly Column[], places: readonly Place[]): void {
    this.need(12);
    const { paper, y } = this;
    columns.forEach(({ heading }, i) => {
      const words = { ...cellWords(places[i]!), face: 'strong' as const };
      if (heading) paper.part('P', () => paper.text(heading, [places[i]!.x, y], words));
    });
    this.y += 5;
    paper.decoration(() => paper.line([paper.left, this.y], [paper.right, this.y], 0.25));
  }

  /** Turns the page where that height no longer fits; says whether it did. */
  private need(heightMm: number): boolean {
    if (this.y + heightMm <= this.floor) return false;
    this.turn();
    return true;
  }

  private turn(): void {
    this.paper.page();
    this.page += 1;
    this.y = this.running.head(this.paper);
    this.floor = this.running.foot(this.paper, this.page) - GAP_MM;
  }
}

interface Place {
  readonly x: number;
  readonly width: number;
  readonly align: 'left' | 'right';
}

function placed(columns: readonly Column[], paper: Paper): Place[] {
  const whole = paper.right - paper.left;
  let x = paper.left;
  return columns.map(({ share, align = 'left' }) => {
    const place = { x, width: share * whole - GAP_MM, align };
    x += share * whole;
    return place;
  });
}

const cellWords = ({ width, align }: Place): Words => ({ ...CELL, width, align });
