import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { computeChild } from "@steelyard/core/child";
import { centimetres, kilograms } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import {
  type Drawing,
  drawArmBand,
  drawBooklet,
  drawChildSheet,
  drawGuide,
  drawLabels,
  drawReadingTest,
  drawStrip,
  drawWeightGrid,
  type Item,
  labelSheets,
  pageSizes,
  type SheetContext,
} from "@steelyard/paper";
import { describe, expect, it } from "vitest";
import { sampleContext } from "./support/sample-context.ts";

const update = process.env.STEELYARD_UPDATE_GOLDEN !== undefined;

/** A child on a scale, whose doses no body model decides. */
const weighed = computeChild({
  measurements: { lengthCm: centimetres(115), scaleKg: kilograms(20.4) },
  formulary: draftFormulary,
});
if (!weighed.ok) throw new Error(weighed.error.type);
const child = { report: weighed.value, problems: ["anaphylaxis"] } as const;

interface Golden {
  readonly draw: (context: SheetContext) => Drawing;
  /** The figures of a paper that the body model decides are left out: another fit of the model is no change of the paper. */
  readonly isOfTheModel?: true;
  /** The pages that are kept in full; of the others a digest is kept. All when absent. */
  readonly kept?: readonly string[];
}

const papers: Readonly<Record<string, Golden>> = {
  "arm-band-a4": { draw: (context) => drawArmBand({ ...context, size: pageSizes.a4 }), isOfTheModel: true },
  "booklet-a4": {
    draw: (context) =>
      drawBooklet({
        ...context,
        size: pageSizes.a4,
        formulary: draftFormulary,
        problems: child.problems,
      }),
    kept: ["2"],
  },
  "child-sheet-letter": {
    draw: (context) =>
      drawChildSheet({ ...context, ...child, size: pageSizes.letter, measured: ["length 115 cm"] }),
  },
  "grid-letter": {
    draw: (context) => drawWeightGrid({ ...context, size: pageSizes.letter, girths: "arm" }),
    isOfTheModel: true,
  },
  "guide-a4": { draw: (context) => drawGuide({ ...context, size: pageSizes.a4 }) },
  "labels-70x37": {
    draw: (context) => drawLabels({ ...context, ...child, sheet: labelSheets[0] as (typeof labelSheets)[0] }),
    kept: ["2"],
  },
  "reading-test-a4": {
    draw: (context) => drawReadingTest({ ...context, size: pageSizes.a4 }),
    isOfTheModel: true,
    kept: ["1"],
  },
  "strip-a4": {
    draw: (context) => {
      const drawing = drawStrip({ ...context, medium: { sheet: pageSizes.a4 } });
      if (!drawing.ok) throw new Error("too narrow");
      return drawing.value;
    },
    isOfTheModel: true,
  },
};

// A display list as text, so that a change of a paper shows as lines that a reviewer can read. What the body model decides (curves, weights)
// is measured elsewhere and left out here.
describe.each(Object.entries(papers))("the display list of %s", (name, { draw, isOfTheModel, kept }) => {
  it("is the one that was looked at and kept (STEELYARD_UPDATE_GOLDEN=1 writes it anew)", async () => {
    const { typefaces, messages, imprint } = await sampleContext();
    const modelVersion = "0";
    const context = {
      typefaces,
      messages,
      imprint: { ...imprint, modelVersion, fingerprint: "0".repeat(64) },
    };
    const lines = draw(context).pages.flatMap(({ label, widthMm, heightMm, items }) => {
      const head = `page ${label}: ${widthMm} x ${heightMm} mm`;
      const list = items.flatMap((item) => describeItem(item, "  ", isOfTheModel));
      return kept === undefined || kept.includes(label)
        ? [head, ...list]
        : [`${head}, ${list.length} lines, ${digestOf(list)}`];
    });
    const path = fileURLToPath(new URL(`golden/${name}.txt`, import.meta.url));
    const text = `${lines.join("\n")}\n`;
    if (update) writeFileSync(path, text);
    expect(text).toBe(readFileSync(path, "utf8"));
  });
});

function digestOf(lines: readonly string[]): string {
  return createHash("sha256").update(lines.join("\n")).digest("hex").slice(0, 16);
}

/** Roles whose content the model decides. */
function isModelled({ role, alt }: Extract<Item, { kind: "group" }>): boolean {
  return role === "Table" || alt?.startsWith("Lines of equal total weight") === true;
}

function describeItem(item: Item, indent: string, masked = false): string[] {
  switch (item.kind) {
    case "text":
      return [
        `${indent}${mm(item.at)} ${item.anchor} ${item.font} ${Math.round(item.sizePt * 100) / 100} pt "${masked ? weightless(item.text) : item.text}"`,
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
      if (masked && isModelled(item)) return [head];
      // A ruler is measured tick by tick elsewhere; here it is where it is.
      const inner = item.items.flatMap((own) => describeItem(own, `${indent}  `, masked));
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
