import { type PlotOptions, plot } from "@observablehq/plot";
import { parseHTML } from "linkedom";

const ink = "black";

/**
 * Draws a plot as the text of an SVG file that stands alone: black on white, the same bytes every time (numbers to two decimals,
 * ids counted within the figure).
 */
export function drawSvg({ title, ...options }: PlotOptions & { readonly title: string }): string {
  const { document } = parseHTML("<!doctype html><html><body></body></html>");
  const drawn = plot({
    ...options,
    document: document as unknown as NonNullable<PlotOptions["document"]>,
    ariaLabel: title,
    style: { background: "white", color: ink, fontSize: "12px" },
  });
  const svg = String((drawn as unknown as { readonly outerHTML: string }).outerHTML);
  const ids = [...new Set([...svg.matchAll(/\bid="([^"]+)"/g)].map((match) => match[1] as string))];
  const named = ids.reduce(
    (text, id, i) => text.replaceAll(new RegExp(`\\b${id}\\b`, "g"), `part-${i + 1}`),
    svg,
  );
  const rounded = named.replace(/-?\d+\.\d{3,}(?:e-\d+)?/g, (number) => String(round(Number(number))));
  return `${rounded.replace(/^<svg /, '<svg xmlns="http://www.w3.org/2000/svg" role="img" ').replaceAll("><", ">\n<")}\n`;
}

/** To two decimals, and never -0. */
function round(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}
