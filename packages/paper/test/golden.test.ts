import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import {
  type Drawing,
  drawArmBand,
  drawStrip,
  drawWeightGrid,
  type Item,
  pageSizes,
  type SheetContext,
} from "@steelyard/paper";
import { describe, expect, it } from "vitest";
import { sampleContext } from "./support/sample-context.ts";

const update = process.env.STEELYARD_UPDATE_GOLDEN !== undefined;

const papers: Readonly<Record<string, (context: SheetContext) => Drawing>> = {
  "arm-band-a4": (context) => drawArmBand({ ...context, size: pageSizes.a4 }),
  "grid-letter": (context) => drawWeightGrid({ ...context, size: pageSizes.letter, girths: "arm" }),
  "strip-a4": (context) => {
    const drawing = drawStrip({ ...context, medium: { sheet: pageSizes.a4 } });
    if (!drawing.ok) throw new Error("too narrow");
    return drawing.value;
  },
};

// A display list as text, so that a change of a paper shows as lines that a reviewer can read. What the body model decides (curves, weights)
// is measured elsewhere and left out here: another fit of the model is no change of the paper.
describe.each(Object.entries(papers))("the display list of %s", (name, draw) => {
  it("is the one that was looked at and kept (STEELYARD_UPDATE_GOLDEN=1 writes it anew)", async () => {
    const { typefaces, messages, imprint } = await sampleContext();
    const modelVersion = "0";
    const context = {
      typefaces,
      messages,
      imprint: { ...imprint, modelVersion, fingerprint: "0".repeat(64) },
    };
    const lines = draw(context).pages.flatMap(({ label, widthMm, heightMm, items }) => [
      `page ${label}: ${widthMm} x ${heightMm} mm`,
      ...items.flatMap((item) => describeItem(item, "  ")),
    ]);
    const path = fileURLToPath(new URL(`golden/${name}.txt`, import.meta.url));
    const text = `${lines.join("\n")}\n`;
    if (update) writeFileSync(path, text);
    expect(text).toBe(readFileSync(path, "utf8"));
  });
});

/** Roles whose content the model decides. */
function isOfTheModel({ role, alt }: Extract<Item, { kind: "group" }>): boolean {
  return role === "Table" || alt?.startsWith("Lines of equal total weight") === true;
}

function describeItem(item: Item, indent: string): string[] {
  switch (item.kind) {
    case "text":
      return [
        `${indent}${mm(item.at)} ${item.anchor} ${item.font} ${Math.round(item.sizePt * 100) / 100} pt "${weightless(item.text)}"`,
      ];
    case "line":
      return [`${indent}line ${mm(item.from)} to ${mm(item.to)} of ${item.stroke.widthMm}`];
    case "rectangle":
      return [
        `${indent}rectangle ${mm([item.xMm, item.yMm])} ${mm([item.widthMm, item.heightMm])} ${item.fill ?? "outline"}`,
      ];
    case "path":
      return [`${indent}path of ${item.segments.length} ${item.fill ?? "stroke"} ${boundsOf(item.segments)}`];
    case "group": {
      const head = `${indent}${item.role ?? "group"}${item.under ? " under" : ""}${item.alt === undefined ? "" : ` "${item.alt}"`}`;
      if (isOfTheModel(item)) return [head];
      // A ruler is measured tick by tick elsewhere; here it is where it is.
      const inner = item.items.flatMap((own) => describeItem(own, `${indent}  `));
      return inner.length > 60 ? [head, `${indent}  ${inner.length} items`] : [head, ...inner];
    }
  }
}

/** The same words whatever the model says: figures with a decimal point or a per cent sign, and whole kilograms, left out. */
function weightless(text: string): string {
  return text.replaceAll(/\d+(\.\d+)?(?=\u00a0%| kg)|\d+\.\d+|^\d+$/g, "#");
}

function mm([x, y]: readonly [number, number]): string {
  return `${Math.round(x * 100) / 100},${Math.round(y * 100) / 100}`;
}

function boundsOf(segments: Extract<Item, { kind: "path" }>["segments"]): string {
  const numbers = segments.flatMap(([, ...rest]) => rest as number[]);
  const xs = numbers.filter((_, i) => i % 2 === 0);
  const ys = numbers.filter((_, i) => i % 2 === 1);
  return `${mm([Math.min(...xs), Math.min(...ys)])} to ${mm([Math.max(...xs), Math.max(...ys)])}`;
}
