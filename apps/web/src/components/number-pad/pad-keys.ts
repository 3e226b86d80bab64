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

const digits: readonly PadKey[] = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "0"].map((digit) => ({
  key: digit,
  text: digit,
}));

/** The keys for a field, in the order they stand; `decimal` is the mark of the reader's language. */
export function padKeys(kind: PadKind, decimal: string): readonly PadKey[] {
  const point: PadKey = { key: decimal, text: decimal, name: "point" };
  if (kind === "sum") return [...digits, point, { key: "+", text: "+", name: "plus" }];
  if (kind === "number") return [...digits, point];
  const units: readonly PadKey[] = [
    { key: " y ", text: "y", name: "years" },
    { key: " mo ", text: "mo", name: "months" },
    { key: " w ", text: "w", name: "weeks" },
    { key: " d ", text: "d", name: "days" },
  ];
  return [...digits, ...units];
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
