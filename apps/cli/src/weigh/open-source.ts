import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { fileFailure } from "../file-failure.ts";
import { BYTE_ENCODING } from "./bytes.ts";
import { type CsvDialect, detectDialect } from "./csv-dialect.ts";

/** How much of the file is looked at to tell how it is written. */
const HEAD_BYTES = 65_536;

export interface CsvSource {
  readonly dialect: CsvDialect;
  readonly chunks: AsyncIterable<Buffer>;
  /** Size in bytes where it is known. */
  readonly size: number | undefined;
  /** Bytes handed out so far. */
  bytesRead(): number;
  /** Stops reading, also where the other end keeps silent. */
  close(): void;
}

/** Opens a CSV file, or standard input for "-", and looks at its beginning. */
export async function openSource(path: string): Promise<CsvSource> {
  const name = path === "-" ? "standard input" : path;
  const stream = path === "-" ? process.stdin : createReadStream(path, { highWaterMark: HEAD_BYTES });
  const iterator: AsyncIterator<Buffer> = stream[Symbol.asyncIterator]();
  const head: Buffer[] = [];
  let headLength = 0;
  try {
    while (headLength < HEAD_BYTES) {
      const { done, value } = await iterator.next();
      if (done) break;
      head.push(value);
      headLength += value.length;
    }
  } catch (error) {
    throw fileFailure("read", name, error);
  }
  const start = Buffer.concat(head);
  refuseOtherFiles(start, name);
  const dialect = detectDialect(start.toString(BYTE_ENCODING));
  let bytesRead = 0;

  async function* chunks(): AsyncGenerator<Buffer> {
    const skip = dialect.hasByteOrderMark ? 3 : 0;
    bytesRead = start.length;
    yield start.subarray(skip);
    for (;;) {
      const { done, value } = await iterator.next().catch((error: unknown) => {
        throw fileFailure("read", name, error);
      });
      if (done) return;
      bytesRead += value.length;
      yield value;
    }
  }
  const close = (): void => {
    stream.destroy();
  };
  return { dialect, chunks: chunks(), size: await sizeOf(path), bytesRead: () => bytesRead, close };
}

async function sizeOf(path: string): Promise<number | undefined> {
  if (path === "-") return undefined;
  const { size } = await stat(path);
  return size > 0 ? size : undefined;
}

function refuseOtherFiles(start: Buffer, name: string): void {
  const refuse = (what: string): never => {
    throw new CommandFailure(EXIT.notServed, `Cannot read ${name}: ${what}`);
  };
  if (start.length === 0) refuse("it is empty. A CSV file begins with a line of column names.");
  if (start.subarray(0, 4).toString(BYTE_ENCODING) === "PK\u0003\u0004") {
    refuse("it is a spreadsheet workbook or another zip file. Save the sheet as CSV (UTF-8) first.");
  }
  const mark = start.length > 1 ? start.readUInt16BE(0) : 0;
  if (mark === 0xfffe || mark === 0xfeff) {
    refuse("it is written in UTF-16. Save it as CSV (UTF-8) first.");
  }
  if (start.includes(0)) refuse("it is not a text file. A CSV file begins with a line of column names.");
}
