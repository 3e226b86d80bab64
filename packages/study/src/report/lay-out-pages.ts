import type { Drawing, Item, Page, Segment, Text, Typefaces } from "@steelyard/paper";
import type { Block, ReportTable, StudyReport } from "./block.ts";

const PAGE = { widthMm: 210, heightMm: 297, leftMm: 20, topMm: 18, rightMm: 190, bottomMm: 278 } as const;
const POINT_MM = 25.4 / 72;
type Look = { readonly sizePt?: number; readonly bold?: boolean };

/** Sets a report on A4 pages: text in lines, tables under their caption with the head repeated, figures as they are. */
export function layOutPages(report: StudyReport, typefaces: Typefaces): Drawing {
  const sheet = new Sheet(typefaces);
  sheet.paragraph(report.title, { sizePt: 16, bold: true });
  for (const block of report.blocks) sheet.put(block);
  return { title: report.title, language: report.language, pages: sheet.done(report) };
}

class Sheet {
  private readonly typefaces: Typefaces;
  private readonly pages: Item[][] = [[]];
  private yMm: number = PAGE.topMm;

  constructor(typefaces: Typefaces) {
    this.typefaces = typefaces;
  }

  put(block: Block): void {
    switch (block.type) {
      case "heading":
        this.room(24);
        this.yMm += 4;
        this.paragraph(block.text, { sizePt: block.level === 2 ? 13 : 11, bold: true });
        return;
      case "text":
        this.paragraph(block.text);
        this.yMm += 1.5;
        return;
      case "list":
        for (const item of block.items) this.paragraph(`• ${item}`);
        this.yMm += 1.5;
        return;
      case "figure":
        this.room(block.page.heightMm + 12);
        this.paragraph(block.caption, { bold: true });
        this.figure(block);
        return;
      case "table":
        this.table(block.table);
    }
  }

  paragraph(text: string, { sizePt = 9, bold = false }: Look = {}): void {
    const lineMm = sizePt * POINT_MM * 1.3;
    for (const line of this.lines(text, PAGE.rightMm - PAGE.leftMm, { sizePt, bold })) {
      this.room(lineMm);
      this.text(line, PAGE.leftMm, this.yMm + lineMm * 0.78, { sizePt, bold });
      this.yMm += lineMm;
    }
  }

  done({ title, creator }: StudyReport): Page[] {
    return this.pages.map((items, i) => ({
      widthMm: PAGE.widthMm,
      heightMm: PAGE.heightMm,
      label: String(i + 1),
      items: [
        ...items,
        this.measured(`${title} · ${creator} · ${i + 1} / ${this.pages.length}`, PAGE.leftMm, 288, {
          sizePt: 7,
        }),
      ],
    }));
  }

  private figure({ page, caption }: Extract<Block, { type: "figure" }>): void {
    const moved = page.items.map((item) => moveItem(item, PAGE.leftMm, this.yMm));
    this.items().push({ kind: "group", items: moved, role: "Figure", alt: caption });
    this.yMm += page.heightMm + 4;
  }

  private table({ caption, head, rows }: ReportTable): void {
    const sizePt = 7;
    const lineMm = sizePt * POINT_MM * 1.25;
    const whole = PAGE.rightMm - PAGE.leftMm;
    const natural = head.map((cell, i) => {
      const widths = [...cell.split(" "), ...rows.map((row) => row[i] ?? "")].map((text) =>
        this.width(text, { sizePt, bold: true }),
      );
      return Math.min(i === 0 ? 62 : 44, Math.max(9, ...widths) + 3);
    });
    const scale = Math.min(1, whole / natural.reduce((sum, width) => sum + width, 0));
    const widths = natural.map((width) => width * scale);
    const lefts = widths.map(
      (_, i) => PAGE.leftMm + widths.slice(0, i).reduce((sum, width) => sum + width, 0),
    );
    const set = (cells: readonly string[], bold: boolean): void => {
      const lines = cells.map((cell, i) =>
        this.lines(cell, (widths[i] as number) - 2, { sizePt, bold: bold || i === 0 }),
      );
      const heightMm = lineMm * Math.max(1, ...lines.map(({ length }) => length)) + 1.4;
      if (this.yMm + heightMm > PAGE.bottomMm) {
        this.turn();
        if (!bold) set(head, true);
      }
      lines.forEach((own, i) => {
        for (const [k, line] of own.entries())
          this.text(line, lefts[i] as number, this.yMm + 1 + lineMm * (k + 0.8), {
            sizePt,
            bold: bold || i === 0,
          });
      });
      this.yMm += heightMm;
      this.items().push({
        kind: "line",
        from: [PAGE.leftMm, this.yMm],
        to: [PAGE.rightMm, this.yMm],
        stroke: { colour: "#bdbdbd", widthMm: 0.15 },
      });
    };
    this.room(22);
    this.yMm += 1.5;
    this.paragraph(caption, { bold: true });
    set(head, true);
    for (const row of rows) set(row, false);
    this.yMm += 3;
  }

  private lines(text: string, widthMm: number, look: Look): string[] {
    const lines: string[] = [];
    let line = "";
    for (const word of text.split(" ").flatMap((own) => this.broken(own, widthMm, look))) {
      const longer = line === "" ? word : `${line} ${word}`;
      if (line !== "" && this.width(longer, look) > widthMm) {
        lines.push(line);
        line = word;
      } else line = longer;
    }
    return [...lines, line];
  }

  /** A word that is wider than its column, such as a fingerprint or a column's name, is cut. */
  private broken(word: string, widthMm: number, look: Look): string[] {
    const parts: string[] = [];
    let rest = word;
    while (rest.length > 1 && this.width(rest, look) > widthMm) {
      let cut = rest.length - 1;
      while (cut > 1 && this.width(rest.slice(0, cut), look) > widthMm) cut--;
      parts.push(rest.slice(0, cut));
      rest = rest.slice(cut);
    }
    return [...parts, rest];
  }

  private text(text: string, xMm: number, yMm: number, look: Look): void {
    if (text !== "") this.items().push(this.measured(text, xMm, yMm, look));
  }

  private measured(text: string, xMm: number, yMm: number, { sizePt = 9, bold = false }: Look): Text {
    return {
      kind: "text",
      text,
      at: [xMm, yMm],
      anchor: "start",
      font: bold ? "bold" : "regular",
      sizePt,
      colour: "#000000",
      widthMm: this.width(text, { sizePt, bold }),
    };
  }

  private width(text: string, { sizePt = 9, bold = false }: Look): number {
    return this.typefaces.widthMm(text, { font: bold ? "bold" : "regular", sizePt });
  }

  private room(mm: number): void {
    if (this.yMm + mm > PAGE.bottomMm) this.turn();
  }

  private turn(): void {
    this.pages.push([]);
    this.yMm = PAGE.topMm;
  }

  private items(): Item[] {
    return this.pages.at(-1) as Item[];
  }
}

function moveItem(item: Item, xMm: number, yMm: number): Item {
  switch (item.kind) {
    case "line":
      return {
        ...item,
        from: [item.from[0] + xMm, item.from[1] + yMm],
        to: [item.to[0] + xMm, item.to[1] + yMm],
      };
    case "rectangle":
      return { ...item, xMm: item.xMm + xMm, yMm: item.yMm + yMm };
    case "text":
      return { ...item, at: [item.at[0] + xMm, item.at[1] + yMm] };
    case "group":
      return { ...item, items: item.items.map((own) => moveItem(own, xMm, yMm)) };
    case "path":
      return { ...item, segments: item.segments.map((segment) => moveSegment(segment, xMm, yMm)) };
  }
}

function moveSegment(segment: Segment, xMm: number, yMm: number): Segment {
  switch (segment[0]) {
    case "Z":
      return segment;
    case "C": {
      const [, a, b, c, d, e, f] = segment;
      return ["C", a + xMm, b + yMm, c + xMm, d + yMm, e + xMm, f + yMm];
    }
    default:
      return [segment[0], segment[1] + xMm, segment[2] + yMm];
  }
}
