import type { Group, Item, Page, Path, Stroke, Text } from "../drawing/item.ts";
import { pointMm } from "../drawing/shapes.ts";
import type { TypefaceFiles } from "../drawing/typefaces.ts";

export interface RenderSvgOptions {
  readonly title: string;
  /** Fonts to put into the file; where absent the page that shows it must have the typeface. */
  readonly embed?: TypefaceFiles;
}

const family = "Atkinson Hyperlegible Next";

/**
 * One page as SVG, true to scale: its size in mm, its coordinates in mm, its text as text.
 *
 * Text carries the width that was measured, so that a viewer with another version of the typeface keeps the layout.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { renderSvg } from "@steelyard/paper";
 *
 * const stroke = { colour: "#000000", widthMm: 0.25 } as const;
 * const line = { kind: "line", from: [20, 20], to: [120, 20], stroke } as const;
 * const page = { widthMm: 210, heightMm: 297, label: "1", items: [line] };
 * assert.match(renderSvg(page, { title: "A line of 100 mm" }), /d="M20 20L120 20"/);
 * ```
 */
export function renderSvg(page: Page, { title, embed }: RenderSvgOptions): string {
  const { widthMm, heightMm } = page;
  const size = `width="${number(widthMm)}mm" height="${number(heightMm)}mm" viewBox="0 0 ${number(widthMm)} ${number(heightMm)}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} role="img" aria-label="${escaped(title)}">`,
    `<title>${escaped(title)}</title>`,
    ...(embed === undefined ? [] : [fontFaces(embed)]),
    `<rect width="${number(widthMm)}" height="${number(heightMm)}" fill="#ffffff"/>`,
    `<g font-family="'${family}', sans-serif" fill="none">`,
    ...page.items.map((item) => write(item, { clips: 0 })),
    "</g>",
    "</svg>",
    "",
  ].join("\n");
}

function write(item: Item, count: { clips: number }): string {
  switch (item.kind) {
    case "line":
      return `<path d="M${number(item.from[0])} ${number(item.from[1])}L${number(item.to[0])} ${number(item.to[1])}"${paint(item)}/>`;
    case "path":
      return `<path d="${pathData(item)}"${paint(item)}/>`;
    case "rectangle": {
      const radius = item.radiusMm === undefined ? "" : ` rx="${number(item.radiusMm)}"`;
      return `<rect x="${number(item.xMm)}" y="${number(item.yMm)}" width="${number(item.widthMm)}" height="${number(item.heightMm)}"${radius}${paint(item)}/>`;
    }
    case "text":
      return writeText(item);
    case "group":
      return writeGroup(item, count);
  }
}

function writeText({ text, at, anchor, font, sizePt, colour, angleDeg, widthMm }: Text): string {
  const [x, y] = at.map(number);
  const turn = angleDeg === undefined ? "" : ` transform="rotate(${number(angleDeg)} ${x} ${y})"`;
  const weight = font === "bold" ? ' font-weight="700"' : "";
  const width = widthMm > 0 ? ` textLength="${number(widthMm)}"` : "";
  return `<text x="${x}" y="${y}" font-size="${number(sizePt * pointMm)}"${weight} fill="${colour}" text-anchor="${anchor}"${width}${turn} xml:space="preserve">${escaped(text)}</text>`;
}

function writeGroup({ items, alt, clip, under, language }: Group, count: { clips: number }): string {
  const label = alt === undefined ? "" : ` role="img" aria-label="${escaped(alt)}"`;
  const lang = language === undefined ? "" : ` lang="${escaped(language)}"`;
  const hidden = under ? ' aria-hidden="true"' : "";
  const inner = items.map((item) => write(item, count)).join("\n");
  if (clip === undefined) return `<g${label}${lang}${hidden}>\n${inner}\n</g>`;
  // The box itself names the clip, so that the same box is the same name wherever the drawing is shown.
  const box = [clip.xMm, clip.yMm, clip.widthMm, clip.heightMm].map(number);
  const id = `clip-${box.join("-").replaceAll(".", "_")}`;
  return `<clipPath id="${id}"><rect x="${box[0]}" y="${box[1]}" width="${box[2]}" height="${box[3]}"/></clipPath>\n<g clip-path="url(#${id})"${label}${lang}${hidden}>\n${inner}\n</g>`;
}

function pathData({ segments }: Path): string {
  return segments.map(([command, ...numbers]) => command + numbers.map(number).join(" ")).join("");
}

function paint({ stroke, fill }: { stroke?: Stroke; fill?: string }): string {
  const filled = fill === undefined ? "" : ` fill="${fill}"`;
  if (stroke === undefined) return filled;
  const dash =
    stroke.dashMm === undefined ? "" : ` stroke-dasharray="${stroke.dashMm.map(number).join(" ")}"`;
  const cap = stroke.cap === "round" ? ' stroke-linecap="round" stroke-linejoin="round"' : "";
  return `${filled} stroke="${stroke.colour}" stroke-width="${number(stroke.widthMm)}"${dash}${cap}`;
}

/** To 0.001 mm. */
function number(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll('"', "&quot;");
}

function fontFaces(files: TypefaceFiles): string {
  const faces = (["regular", "bold"] as const).flatMap((font) =>
    files[font].map((bytes, file) => {
      // Files after the first hold letters that the first has not.
      const range = file === 0 ? "" : "unicode-range:U+0100-02FF,U+1E00-1EFF;";
      return `@font-face{font-family:"${family}";font-weight:${font === "bold" ? 700 : 400};${range}src:url(data:font/woff;base64,${base64(bytes)})}`;
    }),
  );
  return `<style>${faces.reverse().join("")}</style>`;
}

const digits = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

function base64(bytes: Uint8Array): string {
  let text = "";
  for (let i = 0; i < bytes.length; i += 3) {
    const [a = 0, b = 0, c = 0] = bytes.subarray(i, i + 3);
    const left = bytes.length - i;
    text += (digits[a >> 2] ?? "") + (digits[((a & 3) << 4) | (b >> 4)] ?? "");
    text += left > 1 ? (digits[((b & 15) << 2) | (c >> 6)] ?? "") : "=";
    text += left > 2 ? (digits[c & 63] ?? "") : "=";
  }
  return text;
}
