import { readFile } from "node:fs/promises";
import type { Formulary } from "@steelyard/core/dosing";
import { draftFormulary, type FormularyFault, validateFormulary } from "@steelyard/formulary";
import { readFormularyText } from "@steelyard/formulary/ownership";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { fileFailure } from "../file-failure.ts";

/** The name under which the formulary that ships is taken in place of a file. */
export const DRAFT = "draft";

export interface LoadedFormulary {
  readonly name: string;
  readonly formulary: Formulary;
  /** The file as it stands, which is what a sign-off is about; absent for the draft that ships. */
  readonly file?: { readonly text: string; readonly value: Formulary };
}

/** A formulary from its file, whole and without a fault, or a failure that lists every fault with its place. */
export async function loadFormulary(path: string): Promise<LoadedFormulary> {
  if (path === DRAFT) return { name: "the draft that ships", formulary: draftFormulary };
  const { text, value } = await loadJson(path);
  const checked = validateFormulary(value);
  if (!checked.ok) throw faultyFile(path, checked.error);
  return { name: path, formulary: checked.value, file: { text, value: value as Formulary } };
}

/** The data of a JSON file. */
export async function loadJson(path: string): Promise<{ readonly text: string; readonly value: unknown }> {
  const text = await loadText(path);
  const read = readFormularyText(text);
  if (!read.ok) throw faultyFile(path, read.error);
  return { text, value: read.value };
}

export async function loadText(path: string): Promise<string> {
  try {
    return await readFile(path, "utf8");
  } catch (error) {
    throw fileFailure("read", path, error);
  }
}

/** Every fault on a line of its own, and that nothing was taken from the file. */
export function faultyFile(path: string, faults: readonly FormularyFault[]): CommandFailure {
  const count = faults.length === 1 ? "1 fault" : `${faults.length} faults`;
  return new CommandFailure(
    EXIT.notServed,
    [
      `${path} has ${count}; nothing of it was taken.`,
      ...faults.map(({ place, message }) => `* ${place}: ${message}`),
    ].join("\n"),
  );
}
