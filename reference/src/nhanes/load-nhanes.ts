import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { basename, join } from "node:path";
import { gunzipSync } from "node:zlib";
import { readTransport, type TransportFile } from "@steelyard/study/transport";
import type { ChildRow } from "./child-row.ts";
import { readTidyCsv } from "./read-tidy-csv.ts";
import { readTransportCycle } from "./read-transport-cycles.ts";

/** What was read, from where, and how the two forms agree where both hold the same child. */
export interface NhanesLoad {
  readonly children: readonly ChildRow[];
  readonly files: readonly string[];
  /** Children found in a transport file and in the tidy file, and how many of them differ in any value. */
  readonly inBoth: number;
  readonly differing: number;
}

/**
 * Reads every NHANES file below a folder: genuine SAS transport files (`BMX_C.XPT` with `DEMO_C.XPT` and so on, gzipped
 * or not, any case) and the tidy `nhanes_children.csv`. A child in both counts once.
 *
 * Throws an `Error` that says what to download when the folder holds neither, and one that names the file when it is
 * not what its name says.
 */
export function loadNhanes(folder: string): NhanesLoad {
  const paths = listFiles(folder).sort();
  const transports = new Map<string, TransportFile>();
  const files: string[] = [];
  const tidy: ChildRow[] = [];
  for (const path of paths) {
    const name = basename(path).toUpperCase().replace(/\.GZ$/, "");
    if (/^(BMX|DEMO)(_[B-J])?\.XPT$/.test(name)) {
      transports.set(name.replace(/\.XPT$/, ""), readFile(path, transportFile));
      files.push(basename(path));
    } else if (name === "NHANES_CHILDREN.CSV") {
      for (const row of readFile(path, (bytes) => readTidyCsv(new TextDecoder().decode(bytes))))
        tidy.push(row);
      files.push(basename(path));
    }
  }
  const genuine = [...transports].flatMap(([name, bodyMeasures]) => {
    if (!name.startsWith("BMX")) return [];
    const letter = name.slice("BMX_".length);
    const demographics = transports.get(name.replace("BMX", "DEMO"));
    if (demographics === undefined) {
      throw new Error(
        `Cannot use ${name}.XPT without ${name.replace("BMX", "DEMO")}.XPT: download both from the CDC`,
      );
    }
    return readTransportCycle({ letter, bodyMeasures, demographics });
  });
  if (genuine.length + tidy.length === 0) {
    throw new Error(
      `Cannot fit as ${folder} holds no NHANES file: put BMX_*.XPT and DEMO_*.XPT from the CDC, or nhanes_children.csv, there`,
    );
  }
  return { files, ...joinOnSeqn({ genuine, tidy }) };
}

function joinOnSeqn({ genuine, tidy }: { genuine: ChildRow[]; tidy: ChildRow[] }): Omit<NhanesLoad, "files"> {
  const bySeqn = new Map(tidy.map((row) => [row.seqn, row]));
  let inBoth = 0;
  let differing = 0;
  for (const row of genuine) {
    const same = bySeqn.get(row.seqn);
    if (same !== undefined) {
      inBoth++;
      if (!agree(row, same)) differing++;
    } else {
      bySeqn.set(row.seqn, row);
    }
  }
  // The order of files on disk must not change the fit: sums of floating-point numbers depend on order.
  const children = [...bySeqn.values()].sort((a, b) => a.seqn - b.seqn);
  return { children, inBoth, differing };
}

function agree(a: ChildRow, b: ChildRow): boolean {
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]) as Set<keyof ChildRow>;
  for (const key of keys) {
    const left = a[key];
    const right = b[key];
    if (
      typeof left === "number" && typeof right === "number" ? Math.abs(left - right) > 1e-6 : left !== right
    )
      return false;
  }
  return true;
}

function listFiles(folder: string): string[] {
  if (!existsSync(folder)) throw new Error(`Cannot fit as there is no folder ${folder}`);
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((name) => join(folder, name))
    .filter((path) => statSync(path).isFile());
}

/** What `read` makes of a file, gzipped or not; an error from inside it says which file it was. */
function readFile<T>(path: string, read: (bytes: Uint8Array) => T): T {
  try {
    const bytes = readFileSync(path);
    return read(path.toLowerCase().endsWith(".gz") ? gunzipSync(bytes) : bytes);
  } catch (cause) {
    throw new Error(`Cannot read ${path}: ${cause instanceof Error ? cause.message : cause}`, { cause });
  }
}

function transportFile(bytes: Uint8Array): TransportFile {
  const file = readTransport(bytes);
  if (!file.ok) throw new Error(JSON.stringify(file.error));
  return file.value;
}
