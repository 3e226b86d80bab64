import type { Anchor, Box, Colour, FontName, Group, Item, Point, Role, Text } from "./item.ts";
import { ink } from "./palette.ts";
import { group, pointMm } from "./shapes.ts";
import type { Typefaces } from "./typefaces.ts";

/** How text looks; what is absent is regular, black, 9 pt, from its start. */
export interface TextLook {
  readonly font?: FontName;
  readonly sizePt?: number;
  readonly colour?: Colour;
  readonly anchor?: Anchor;
  readonly angleDeg?: number;
  readonly within?: Box;
}

/** Distance of baselines as a share of the type size. */
const leading = 1.22;

/** The typeface has no narrow no-break space; its thin space is as wide, and lines are broken at plain spaces alone. */
function settable(text: string): string {
  return text.replaceAll("\u202f", "\u2009");
}

/** One line of text on a baseline, measured. */
export function setText(typefaces: Typefaces, words: string, at: Point, look: TextLook = {}): Text {
  const text = settable(words);
  const { font = "regular", sizePt = 9, colour = ink, anchor = "start", angleDeg, within } = look;
  return {
    kind: "text",
    text,
    at,
    anchor,
    font,
    sizePt,
    colour,
    ...(angleDeg === undefined || angleDeg === 0 ? {} : { angleDeg }),
    widthMm: typefaces.widthMm(text, { font, sizePt }),
    ...(within === undefined ? {} : { within }),
  };
}

/** The lines that a text takes in a width, the first one after `firstMm`: broken at spaces, never at a no-break space; a longer word stands alone. */
export function breakLines(
  typefaces: Typefaces,
  text: string,
  {
    font = "regular",
    sizePt = 9,
    widthMm,
    firstMm = 0,
  }: Pick<TextLook, "font" | "sizePt"> & { readonly widthMm: number; readonly firstMm?: number },
): readonly string[] {
  const look = { font, sizePt };
  const spaceMm = typefaces.widthMm(" ", look);
  const lines: string[] = [];
  for (const part of settable(text).split("\n")) {
    // Word by word, which may be measured once and for all; what kerning does across a space is less than a hair.
    let line = "";
    let lineMm = 0;
    let takenMm = lines.length === 0 ? firstMm : 0;
    for (const word of part.split(" ")) {
      const wordMm = typefaces.widthMm(word, look);
      if ((line !== "" || takenMm > 0) && takenMm + lineMm + spaceMm + wordMm > widthMm) {
        lines.push(line);
        takenMm = 0;
        line = word;
        lineMm = wordMm;
      } else {
        lineMm += line === "" ? wordMm : spaceMm + wordMm;
        line = line === "" ? word : `${line} ${word}`;
      }
    }
    lines.push(line);
  }
  return lines;
}

export interface Paragraph {
  readonly group: Group;
  /** From the top of the first line to the bottom of the last. */
  readonly heightMm: number;
}

export interface Tail {
  readonly text: string;
  readonly sizePt: number;
}

/** Between the last line and what comes behind it, mm. */
const beforeTailMm = 1;

/** Whether smaller words have room behind the last line of a text. */
export function hasRoomForTail(
  typefaces: Typefaces,
  {
    lines,
    tail,
    look,
    widthMm,
  }: {
    readonly lines: readonly string[];
    readonly tail: Tail;
    readonly look: { readonly font: FontName; readonly sizePt: number };
    readonly widthMm: number;
  },
): boolean {
  const lastMm = typefaces.widthMm(lines.at(-1) ?? "", look);
  const tailMm = typefaces.widthMm(settable(tail.text), { font: "regular", sizePt: tail.sizePt });
  return lastMm + beforeTailMm + tailMm <= widthMm;
}

export interface ParagraphLook extends TextLook {
  readonly widthMm: number;
  readonly role?: Role;
  readonly language?: string;
  /** Bold words before the text, in the language of the drawing where none is said. */
  readonly lead?: string;
  readonly leadLanguage?: string | undefined;
  /** Smaller words after the last line, on its baseline; `hasRoomForTail` says whether they fit there. */
  readonly tail?: Tail | undefined;
}

/** How high a text is in its width: what `setParagraph` says, without setting it. */
export function paragraphHeightMm(
  typefaces: Typefaces,
  text: string,
  { widthMm, lead = "", font = "regular", sizePt = 9 }: ParagraphLook,
): number {
  const firstMm = leadMmOf(typefaces, lead, sizePt);
  return breakLines(typefaces, text, { font, sizePt, widthMm, firstMm }).length * lineMmOf(sizePt);
}

function leadMmOf(typefaces: Typefaces, lead: string, sizePt: number): number {
  return lead === "" ? 0 : typefaces.widthMm(`${settable(lead)} `, { font: "bold", sizePt });
}

function lineMmOf(sizePt: number): number {
  return sizePt * pointMm * leading;
}

/** A text set in lines from the top left corner of a box of a given width; `heightMm` says how far it reaches. */
export function setParagraph(
  typefaces: Typefaces,
  text: string,
  {
    at,
    widthMm,
    role = "P",
    language,
    lead = "",
    leadLanguage,
    tail,
    ...look
  }: ParagraphLook & { readonly at: Point },
): Paragraph {
  const { sizePt = 9, anchor = "start" } = look;
  const [leftMm, topMm] = at;
  const lineMm = lineMmOf(sizePt);
  const bold = { ...look, font: "bold" } as const;
  const leadMm = leadMmOf(typefaces, lead, sizePt);
  const lines = breakLines(typefaces, text, { ...look, widthMm, firstMm: leadMm });
  const xMm = leftMm + (anchor === "start" ? 0 : anchor === "middle" ? widthMm / 2 : widthMm);
  const firstMm = topMm + typefaces.capHeight * sizePt * pointMm + 0.12 * sizePt * pointMm;
  const heightMm = lines.length * lineMm;
  const box: Box = { xMm: leftMm, yMm: topMm, widthMm, heightMm: heightMm + 0.2 };
  const items: Item[] = lines.flatMap((line, i) =>
    line === ""
      ? []
      : [
          setText(typefaces, line, [xMm + (i === 0 ? leadMm : 0), firstMm + i * lineMm], {
            within: box,
            ...look,
          }),
        ],
  );
  const last = items.at(-1);
  if (tail !== undefined && last?.kind === "text") {
    const at = [last.at[0] + last.widthMm + beforeTailMm, last.at[1]] as const;
    items.push(setText(typefaces, tail.text, at, { sizePt: tail.sizePt, within: box }));
  }
  const spoken = language === undefined ? {} : { language };
  if (lead === "") return { group: group(items, { role, ...spoken }), heightMm };
  const before = setText(typefaces, lead, [xMm, firstMm], { within: box, ...bold });
  const led = leadLanguage === undefined ? before : group([before], { role: "Span", language: leadLanguage });
  return { group: group([led, group(items, { role: "Span", ...spoken })], { role }), heightMm };
}

/** A paragraph at the largest of some sizes at which it is no higher than there is room for; the smallest where it never is. */
export function fitParagraph(
  typefaces: Typefaces,
  text: string,
  {
    sizesPt,
    roomMm,
    ...look
  }: Omit<ParagraphLook, "sizePt"> & { readonly at: Point } & {
    sizesPt: readonly [number, ...number[]];
    roomMm: number;
  },
): Paragraph {
  const [largest, ...smaller] = sizesPt;
  let set = setParagraph(typefaces, text, { ...look, sizePt: largest });
  for (const sizePt of smaller) {
    if (set.heightMm <= roomMm) return set;
    set = setParagraph(typefaces, text, { ...look, sizePt });
  }
  return set;
}
