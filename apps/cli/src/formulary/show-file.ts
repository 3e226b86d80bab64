import { listFormulary } from "@steelyard/formulary/ownership";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { loadFormulary } from "./load-formulary.ts";

/** `steelyard formulary show [file] [--medicine id]...`. */
export async function showFile(
  path: string,
  { medicine }: { readonly medicine?: readonly string[] },
): Promise<void> {
  const { formulary } = await loadFormulary(path);
  const unknown = medicine?.filter((id) => !formulary.medicines.some((known) => known.id === id)) ?? [];
  if (unknown.length > 0) {
    const ids = formulary.medicines.map(({ id }) => id).sort();
    throw new CommandFailure(
      EXIT.notServed,
      `There is no medicine ${unknown.join(", ")} in this formulary. It has: ${ids.join(", ")}.`,
    );
  }
  process.stdout.write(listFormulary(formulary, medicine === undefined ? {} : { medicineIds: medicine }));
}
