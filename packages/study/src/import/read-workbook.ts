import { err, ok, type Result } from "@steelyard/core/result";
import { type UnzipFileInfo, unzipSync, zipSync } from "fflate";
import readWorkbookFile from "read-excel-file/universal";
import type { ImportIssue } from "./import-issue.ts";
import { checkSheetSpan } from "./sheet-span.ts";

export interface Workbook {
  readonly sheets: readonly string[];
  readonly sheet: string;
  readonly rows: readonly (readonly string[])[];
  /** Cells that hold a formula, whose last computed value is what is read. */
  readonly formulaCells: { readonly count: number; readonly first: readonly string[] };
}

/** All parts of a workbook together may inflate to this many bytes; a sheet of a million rows takes about 250 MB. */
const MOST_BYTES = 512 * 1024 * 1024;
/** No sheet of numbers is packed tighter than this; a file made to exhaust the memory is. */
const MOST_RATIO = 200;
const SHOWN = 8;

/**
 * Reads one sheet of an .xlsx workbook, the first unless named. The sizes its parts claim are checked before anything is inflated, and the
 * inflating stops at the size claimed.
 */
export async function readWorkbook(
  bytes: Uint8Array,
  { sheet }: { sheet?: string } = {},
): Promise<Result<Workbook, ImportIssue>> {
  let total = 0;
  let largest: UnzipFileInfo | undefined;
  let files: ReturnType<typeof unzipSync>;
  try {
    unzipSync(bytes, {
      filter: (info) => {
        total += info.originalSize;
        if (info.originalSize > 1e7 && info.originalSize > MOST_RATIO * Math.max(1, info.size))
          largest = info;
        return false;
      },
    });
    if (total > MOST_BYTES || largest !== undefined)
      return err({ type: "workbook-too-large", bytes: total, most: MOST_BYTES });
    files = unzipSync(bytes, {
      filter: ({ name }) => /\.(xml|rels)$/.test(name) && !name.includes("drawing"),
    });
  } catch (error) {
    return err({ type: "workbook-damaged", detail: messageOf(error) });
  }
  if (!Object.keys(files).some((name) => name.startsWith("xl/")))
    return err({ type: "not-a-table", found: "zip", atByte: 0 });
  // Every part: where the sheets lie is said by another part of the same file.
  for (const xml of Object.values(files)) {
    const span = checkSheetSpan(xml);
    if (!span.ok) return span;
  }
  try {
    // Stored and not packed: the reader then copies and has nothing to inflate.
    const stored = zipSync(files, { level: 0, mtime: new Date(1980, 0, 2) });
    const sheets = await readWorkbookFile(stored.buffer as ArrayBuffer);
    const found = sheet === undefined ? sheets[0] : sheets.find((own) => own.sheet === sheet);
    const names = sheets.map((own) => own.sheet);
    if (found === undefined) return err({ type: "sheet-missing", sheet: sheet ?? "1", sheets: names });
    return ok({
      sheets: names,
      sheet: found.sheet,
      rows: found.data.map((row) => row.map(cellText)),
      formulaCells: formulasOf(files, names.indexOf(found.sheet)),
    });
  } catch (error) {
    return err({ type: "workbook-damaged", detail: messageOf(error) });
  }
}

function cellText(cell: unknown): string {
  if (cell === null || cell === undefined) return "";
  return cell instanceof Date ? cell.toISOString().slice(0, 10) : String(cell);
}

function formulasOf(files: Readonly<Record<string, Uint8Array>>, sheet: number): Workbook["formulaCells"] {
  const sheetFiles = Object.keys(files)
    .filter((name) => /^xl\/worksheets\/sheet\d+\.xml$/.test(name))
    .sort((a, b) => Number(/\d+/.exec(a)) - Number(/\d+/.exec(b)));
  const file = files[sheetFiles[sheet] ?? ""];
  if (file === undefined) return { count: 0, first: [] };
  const xml = new TextDecoder().decode(file);
  const cells = [...xml.matchAll(/<c [^>]*?r="([A-Z]+\d+)"[^>]*>\s*<f[\s>/]/g)].map(
    (match) => match[1] as string,
  );
  return { count: cells.length, first: cells.slice(0, SHOWN) };
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
