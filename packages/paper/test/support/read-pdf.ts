import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

/** A path as an independent reader finds it in the PDF, in mm from the top left corner of the page. */
export interface ReadPath {
  readonly painted: "stroke" | "fill" | "both" | "none";
  readonly lineWidthMm: number;
  readonly strokeColour: string;
  readonly fillColour: string;
  readonly dashed: boolean;
  /** One list of points a subpath; curves cut into straight pieces. */
  readonly subpaths: readonly (readonly (readonly [number, number])[])[];
}

interface ReadText {
  readonly text: string;
  /** Start of the baseline, mm. */
  readonly at: readonly [number, number];
  readonly sizeMm: number;
}

export interface ReadPage {
  readonly widthPt: number;
  readonly heightPt: number;
  readonly paths: readonly ReadPath[];
  readonly texts: readonly ReadText[];
}

type Matrix = readonly [number, number, number, number, number, number];

const pointMm = 25.4 / 72;
const piecesOfCurve = 24;

/** Every path and text of a PDF, by Mozilla's reader, which shares no code with the writer. */
export async function readPdf(bytes: Uint8Array): Promise<readonly ReadPage[]> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0 });
  const document = await task.promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const [, , widthPt = 0, heightPt = 0] = page.view;
    const { fnArray, argsArray } = await page.getOperatorList();
    pages.push({ widthPt, heightPt, ...walk(fnArray, argsArray, heightPt) });
  }
  await task.destroy();
  return pages;
}

interface State {
  matrix: Matrix;
  lineWidth: number;
  stroke: string;
  fill: string;
  dashed: boolean;
  fontSize: number;
}

function walk(
  functions: readonly number[],
  args: readonly unknown[],
  heightPt: number,
): Pick<ReadPage, "paths" | "texts"> {
  let state: State = {
    matrix: [1, 0, 0, 1, 0, 0],
    lineWidth: 1,
    stroke: "#000000",
    fill: "#000000",
    dashed: false,
    fontSize: 1,
  };
  let textMatrix: Matrix = [1, 0, 0, 1, 0, 0];
  const saved: State[] = [];
  const paths: ReadPath[] = [];
  const texts: ReadText[] = [];
  const toMm = (x: number, y: number, matrix: Matrix = state.matrix): [number, number] => {
    const [a, b, c, d, e, f] = matrix;
    return [(a * x + c * y + e) * pointMm, (heightPt - (b * x + d * y + f)) * pointMm];
  };
  for (const [i, operator] of functions.entries()) {
    const given = args[i] as never[];
    switch (operator) {
      case OPS.save:
        saved.push({ ...state });
        break;
      case OPS.restore:
        state = saved.pop() ?? state;
        break;
      case OPS.transform:
        state.matrix = multiply(state.matrix, given as unknown as Matrix);
        break;
      case OPS.setLineWidth:
        state.lineWidth = given[0] as unknown as number;
        break;
      case OPS.setDash:
        state.dashed = (given[0] as unknown as number[]).length > 0;
        break;
      case OPS.setStrokeRGBColor:
        state.stroke = given[0] as unknown as string;
        break;
      case OPS.setFillRGBColor:
        state.fill = given[0] as unknown as string;
        break;
      case OPS.setFont:
        state.fontSize = given[1] as unknown as number;
        break;
      case OPS.setTextMatrix:
        textMatrix = Array.from(given[0] as unknown as Float32Array) as unknown as Matrix;
        break;
      case OPS.showText: {
        const matrix = multiply(state.matrix, textMatrix);
        const glyphs = given[0] as unknown as readonly (number | { unicode: string })[];
        const text = glyphs.map((glyph) => (typeof glyph === "number" ? "" : glyph.unicode)).join("");
        texts.push({
          text,
          at: toMm(0, 0, matrix),
          sizeMm: state.fontSize * Math.hypot(matrix[0], matrix[1]) * pointMm,
        });
        break;
      }
      case OPS.constructPath: {
        const [paint, [data]] = given as unknown as [number, [Float32Array | null]];
        const scale = Math.hypot(state.matrix[0], state.matrix[1]) * pointMm;
        paths.push({
          painted: paintOf(paint),
          lineWidthMm: state.lineWidth * scale,
          strokeColour: state.stroke,
          fillColour: state.fill,
          dashed: state.dashed,
          subpaths: data === null ? [] : subpathsOf(data, toMm),
        });
        break;
      }
      default:
    }
  }
  return { paths, texts };
}

function paintOf(operator: number): ReadPath["painted"] {
  if (operator === OPS.stroke || operator === OPS.closeStroke) return "stroke";
  if (operator === OPS.fill || operator === OPS.eoFill) return "fill";
  return operator === OPS.fillStroke || operator === OPS.closeFillStroke ? "both" : "none";
}

function multiply(m: Matrix, n: Matrix): Matrix {
  return [
    m[0] * n[0] + m[2] * n[1],
    m[1] * n[0] + m[3] * n[1],
    m[0] * n[2] + m[2] * n[3],
    m[1] * n[2] + m[3] * n[3],
    m[0] * n[4] + m[2] * n[5] + m[4],
    m[1] * n[4] + m[3] * n[5] + m[5],
  ];
}

/** pdf.js packs a path as numbers: 0 move, 1 line, 2 cubic, 4 close. */
function subpathsOf(
  data: Float32Array,
  toMm: (x: number, y: number) => [number, number],
): [number, number][][] {
  const subpaths: [number, number][][] = [];
  let last: readonly [number, number] = [0, 0];
  const at = (i: number): [number, number] => [data[i] as number, data[i + 1] as number];
  for (let i = 0; i < data.length; ) {
    const command = data[i];
    const current = subpaths.at(-1);
    if (command === 0) {
      last = at(i + 1);
      subpaths.push([toMm(...last)]);
      i += 3;
    } else if (command === 1) {
      last = at(i + 1);
      current?.push(toMm(...last));
      i += 3;
    } else if (command === 2) {
      const [b, c, d] = [at(i + 1), at(i + 3), at(i + 5)];
      for (let k = 1; k <= piecesOfCurve; k += 1) {
        const t = k / piecesOfCurve;
        const s = 1 - t;
        const of = (axis: 0 | 1): number =>
          s ** 3 * last[axis] + 3 * s * s * t * b[axis] + 3 * s * t * t * c[axis] + t ** 3 * d[axis];
        current?.push(toMm(of(0), of(1)));
      }
      last = d;
      i += 7;
    } else if (command === 4) {
      const first = current?.[0];
      if (first !== undefined) current?.push(first);
      i += 1;
    } else {
      throw new RangeError(
        `Cannot read a path as its command must be 0, 1, 2 or 4: current value is ${command}`,
      );
    }
  }
  return subpaths;
}
