import { err, ok, type Result } from "@steelyard/core/result";
import type { ImportIssue } from "./import-issue.ts";

export type TextEncoding = "utf-8" | "utf-16le" | "utf-16be" | "windows-1252";

export type FileKind =
  | { readonly type: "text"; readonly encoding: TextEncoding; readonly skip: number }
  | { readonly type: "workbook" }
  | { readonly type: "transport" };

const HEAD = 4096;

/** Tells text (and how it is encoded), workbook and SAS transport apart by their bytes, never by the file's name. */
export function tellFileKind(bytes: Uint8Array): Result<FileKind, ImportIssue> {
  if (bytes.length === 0) return err({ type: "empty-file" });
  const head = bytes.subarray(0, HEAD);
  const starts = (...own: readonly number[]): boolean => own.every((byte, i) => head[i] === byte);
  const text = (encoding: TextEncoding, skip: number): Result<FileKind, ImportIssue> =>
    ok({ type: "text", encoding, skip });
  if (starts(0x50, 0x4b, 0x03, 0x04)) return ok({ type: "workbook" });
  if (latin(head, 0, 13) === "HEADER RECORD") return ok({ type: "transport" });
  const found = foreignKind(head);
  if (found !== undefined) return err({ type: "not-a-table", found, atByte: 0 });
  if (starts(0xef, 0xbb, 0xbf)) return text(isUtf8(bytes) ? "utf-8" : "windows-1252", 3);
  if (starts(0xff, 0xfe)) return text("utf-16le", 2);
  if (starts(0xfe, 0xff)) return text("utf-16be", 2);
  const zero = bytes.indexOf(0);
  if (zero >= 0) {
    const zerosAt = (parity: number): number =>
      head.reduce((sum, byte, i) => sum + (byte === 0 && i % 2 === parity ? 1 : 0), 0);
    const most = head.length / 2;
    if (zerosAt(1) > 0.7 * most && zerosAt(0) < 0.05 * most) return text("utf-16le", 0);
    if (zerosAt(0) > 0.7 * most && zerosAt(1) < 0.05 * most) return text("utf-16be", 0);
    return err({ type: "not-a-table", found: "binary", atByte: zero });
  }
  return text(isUtf8(bytes) ? "utf-8" : "windows-1252", 0);
}

function foreignKind(head: Uint8Array): string | undefined {
  const opening = latin(head, 0, 8);
  if (opening.startsWith("\u00d0\u00cf\u0011\u00e0")) return "xls";
  if (opening.startsWith("%PDF")) return "pdf";
  if (opening.startsWith("\u001f\u008b")) return "gzip";
  if (opening.startsWith("PK")) return "zip";
  if (opening.startsWith("$FL2")) return "sav";
  if (opening.startsWith("<stata_d")) return "dta";
  return undefined;
}

function latin(bytes: Uint8Array, from: number, to: number): string {
  return String.fromCharCode(...bytes.subarray(from, to));
}

/** Whether the bytes are UTF-8; a file of ASCII only is. */
function isUtf8(bytes: Uint8Array): boolean {
  let ascii = true;
  for (let i = 0; i < bytes.length && ascii; i++) ascii = (bytes[i] as number) < 0x80;
  if (ascii) return true;
  const decoder = new TextDecoder("utf-8", { fatal: true });
  try {
    for (let at = 0; at < bytes.length; at += 1 << 20)
      decoder.decode(bytes.subarray(at, at + (1 << 20)), { stream: true });
    decoder.decode();
    return true;
  } catch {
    return false;
  }
}
