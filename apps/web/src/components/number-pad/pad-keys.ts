/** What a field takes: a number; a number or the sum of two; an age with its unit. */
export type PadKind = "number" | "sum" | "age";

export interface PadKey {
  /** What it types. */
  readonly key: string;
  /** What stands on it. */
  readonly text: string;
  /** The name of what stands on it, in the catalogue, where the sign alone would be read badly. */
  readonly name?: "plus" | "point" | "years" | "months" | "weeks" | "days";
}

const digit = (key: string): PadKey => ({ key, text: key });
const digits: readonly PadKey[] = ["1", "2", "3", "4", "5", "6", "7", "8", "9"].map(digit);

/** The keys for a field: nine digits in threes, the row of the nought below them, and what stands beside. */
export function padKeys(
  kind: PadKind,
  decimal: string,
): { readonly rows: readonly (PadKey | undefined)[]; readonly beside: readonly PadKey[] } {
  const point: PadKey = { key: decimal, text: decimal, name: "point" };
  if (kind === "age") {
    const unit = (key: string, name: NonNullable<PadKey["name"]>): PadKey => ({
      key: ` ${key} `,
      text: key,
      name,
    });
    return {
      rows: [...digits, unit("y", "years"), digit("0"), unit("mo", "months")],
      beside: [unit("w", "weeks"), unit("d", "days")],
    };
  }
  const plus: PadKey | undefined = kind === "sum" ? { key: "+", text: "+", name: "plus" } : undefined;
  return { rows: [...digits, point, digit("0"), plus], beside: [] };
}

/** Types into a field as a keyboard would, so that whoever listens to the field hears it. */
export function pressKey(field: HTMLInputElement, key: string): void {
  const end = field.value.length;
  const from = field.selectionStart ?? end;
  const to = field.selectionEnd ?? end;
  if (key === "erase") field.setRangeText("", from === to ? Math.max(0, from - 1) : from, to, "end");
  else field.setRangeText(key, from, to, "end");
  field.dispatchEvent(new InputEvent("input", { bubbles: true }));
}
