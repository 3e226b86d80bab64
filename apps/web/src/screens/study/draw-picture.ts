import type { Item, Page, Text, Typefaces } from "@steelyard/paper";

/** Dots across a figure of 170 mm: about 300 per inch. */
const WIDTH_PX = 2000;
const POINT_MM = 25.4 / 72;
const FAMILY = "Study report";

/** A figure as PNG, drawn on the browser's own canvas in the report's typeface, which is loaded first. */
export async function drawPicture(page: Page, typefaces: Typefaces): Promise<Uint8Array<ArrayBuffer>> {
  await loadFaces(typefaces);
  const pxPerMm = WIDTH_PX / page.widthMm;
  const canvas = new OffscreenCanvas(WIDTH_PX, Math.round(page.heightMm * pxPerMm));
  const context = canvas.getContext("2d");
  if (context === null) throw new TypeError("Cannot draw a picture as the browser has no canvas");
  context.fillStyle = "#ffffff";
  context.fillRect(0, 0, canvas.width, canvas.height);
  for (const item of page.items) drawItem({ context, item, pxPerMm });
  const blob = await canvas.convertToBlob({ type: "image/png" });
  return new Uint8Array(await blob.arrayBuffer());
}

interface Given<T extends Item = Item> {
  readonly context: OffscreenCanvasRenderingContext2D;
  readonly item: T;
  readonly pxPerMm: number;
}

function drawItem({ context, item, pxPerMm }: Given): void {
  if (item.kind === "group") {
    for (const own of item.items) drawItem({ context, item: own, pxPerMm });
    return;
  }
  if (item.kind === "text") {
    drawText({ context, item, pxPerMm });
    return;
  }
  const path = new Path2D(pathOf(item, pxPerMm));
  const fill = item.kind === "line" ? undefined : item.fill;
  if (fill !== undefined) {
    context.fillStyle = fill;
    context.fill(path);
  }
  if (item.stroke === undefined) return;
  const { colour, widthMm, dashMm = [], cap } = item.stroke;
  context.strokeStyle = colour;
  context.lineWidth = widthMm * pxPerMm;
  context.setLineDash(dashMm.map((mm) => mm * pxPerMm));
  context.lineCap = cap === "round" ? "round" : "butt";
  context.lineJoin = cap === "round" ? "round" : "miter";
  context.stroke(path);
}

function drawText({ context, item, pxPerMm }: Given<Text>): void {
  const [xMm, yMm] = item.at;
  context.save();
  context.translate(xMm * pxPerMm, yMm * pxPerMm);
  context.rotate(((item.angleDeg ?? 0) * Math.PI) / 180);
  context.font = `${item.font === "bold" ? 700 : 400} ${item.sizePt * POINT_MM * pxPerMm}px "${FAMILY}"`;
  context.textAlign = item.anchor === "middle" ? "center" : item.anchor;
  context.fillStyle = item.colour;
  context.fillText(item.text, 0, 0);
  context.restore();
}

function pathOf(item: Exclude<Item, { kind: "group" | "text" }>, pxPerMm: number): string {
  const px = (mm: number): number => mm * pxPerMm;
  switch (item.kind) {
    case "line":
      return `M${item.from.map(px).join(" ")}L${item.to.map(px).join(" ")}`;
    case "path":
      return item.segments.map(([command, ...numbers]) => command + numbers.map(px).join(" ")).join("");
    case "rectangle": {
      const [x, y, width, height] = [item.xMm, item.yMm, item.widthMm, item.heightMm].map(px) as [
        number,
        number,
        number,
        number,
      ];
      const r = px(item.radiusMm ?? 0);
      const corner = (toX: number, toY: number): string => `a${r} ${r} 0 0 1 ${toX} ${toY}`;
      return `M${x + r} ${y}h${width - 2 * r}${corner(r, r)}v${height - 2 * r}${corner(-r, r)}h${2 * r - width}${corner(-r, -r)}v${2 * r - height}${corner(r, -r)}Z`;
    }
  }
}

let loaded: Promise<unknown> | undefined;

/** A worker has typefaces of its own; the files of further letters are asked where the first has none. */
function loadFaces({ files }: Typefaces): Promise<unknown> {
  const { fonts } = self as unknown as { readonly fonts: FontFaceSet };
  loaded ??= Promise.all(
    (["regular", "bold"] as const).flatMap((font) =>
      files[font].map((bytes, file) => {
        const face = new FontFace(FAMILY, bytes as Uint8Array<ArrayBuffer>, {
          weight: font === "bold" ? "700" : "400",
          ...(file === 0 ? {} : { unicodeRange: "U+0100-02FF,U+1E00-1EFF" }),
        });
        fonts.add(face);
        return face.load();
      }),
    ),
  );
  return loaded;
}
