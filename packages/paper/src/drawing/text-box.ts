import type { Point, Text } from "./item.ts";
import { pointMm } from "./shapes.ts";
import type { Typefaces } from "./typefaces.ts";

/** From the anchor to where the text begins, mm along the line. */
export function startOf({ anchor, widthMm }: Pick<Text, "anchor" | "widthMm">): number {
  return anchor === "start" ? 0 : anchor === "middle" ? -widthMm / 2 : -widthMm;
}

/** The four corners round the ink of a text: from its start to its end, from the tops of capitals to below the line. */
export function textCorners(
  text: Text,
  { capHeight, descent }: Typefaces,
): readonly [Point, Point, Point, Point] {
  const sizeMm = text.sizePt * pointMm;
  const left = startOf(text);
  const right = left + text.widthMm;
  const top = -capHeight * sizeMm;
  const bottom = (/[a-zçgjpqy,;()[\]/]/.test(text.text) ? descent : 0) * sizeMm;
  const angle = ((text.angleDeg ?? 0) * Math.PI) / 180;
  const turned = (x: number, y: number): Point => [
    text.at[0] + x * Math.cos(angle) - y * Math.sin(angle),
    text.at[1] + x * Math.sin(angle) + y * Math.cos(angle),
  ];
  return [turned(left, top), turned(right, top), turned(right, bottom), turned(left, bottom)];
}
