import { generate } from "lean-qr";
import type { Box, Group, Path, Segment } from "./item.ts";
import { ink } from "./palette.ts";
import { group } from "./shapes.ts";

/** Modules of white that must surround a code (ISO/IEC 18004). */
const quietModules = 4;

/**
 * A text as a QR code that fills a square box, quiet zone included.
 *
 * @source iso-18004
 */
export function drawQrCode({ text, box, alt }: { text: string; box: Box; alt: string }): Group {
  const code = generate(text);
  const moduleMm = box.widthMm / (code.size + 2 * quietModules);
  const segments: Segment[] = [];
  for (let row = 0; row < code.size; row += 1) {
    for (let from = 0; from < code.size; from += 1) {
      if (!code.get(from, row)) continue;
      let to = from;
      while (code.get(to, row)) to += 1;
      const left = box.xMm + (from + quietModules) * moduleMm;
      const right = box.xMm + (to + quietModules) * moduleMm;
      const top = box.yMm + (row + quietModules) * moduleMm;
      const bottom = top + moduleMm;
      segments.push(["M", left, top], ["L", right, top], ["L", right, bottom], ["L", left, bottom], ["Z"]);
      from = to;
    }
  }
  const modules: Path = { kind: "path", segments, fill: ink };
  return group([modules], { role: "Figure", alt });
}
