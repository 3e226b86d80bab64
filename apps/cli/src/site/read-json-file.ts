import { readFile, stat } from "node:fs/promises";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { fileFailure } from "../file-failure.ts";

/** A profile has a few thousand bytes; what is far larger was given by mistake. */
const LONGEST_BYTES = 1_000_000;

/** The value in a JSON file; a sentence when there is none. */
export async function readJsonFile(path: string): Promise<unknown> {
  const refuse = (what: string): CommandFailure =>
    new CommandFailure(EXIT.notServed, `Cannot read ${path}: ${what}`);
  let text: string;
  try {
    if ((await stat(path)).size > LONGEST_BYTES) throw refuse("it is far larger than any site profile.");
    text = await readFile(path, "utf8");
  } catch (error) {
    throw error instanceof CommandFailure ? error : fileFailure("read", path, error);
  }
  try {
    return JSON.parse(text.replace(/^\ufeff/, ""));
  } catch {
    throw refuse("it is not JSON.");
  }
}
