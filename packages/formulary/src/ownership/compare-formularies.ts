import type { Dose, Formulary } from "@steelyard/core/dosing";
import { canonicalJson } from "./canonical-json.ts";
import { isDose, type Readable, readableFields, words } from "./readable-value.ts";

/** One thing that differs between two formularies. */
export interface Difference {
  /** Where, in names: "adrenaline, use anaphylaxis-im, option by-weight". */
  readonly place: string;
  /** What: "maximum", "use arrest". */
  readonly field: string;
  readonly change: "changed" | "added" | "removed";
  /** The two values; absent where a part with parts of its own is added or removed. */
  readonly from?: string | Dose;
  readonly to?: string | Dose;
}

/** Lists whose members have an id, and what one is called. */
const MEMBERS: Readonly<Record<string, string>> = {
  medicines: "medicine",
  uses: "use",
  options: "option",
  strengths: "strength",
  preparations: "preparation",
  sources: "source",
  overlays: "overlay",
};

type Loose = Readonly<Record<string, unknown>>;
interface Named {
  readonly id: string;
}

/**
 * Everything that differs between two formularies, in the order of the first; parts with an id are matched by it.
 *
 * ```ts
 * import { draftFormulary } from "@steelyard/formulary";
 * import { compareFormularies } from "@steelyard/formulary/ownership";
 * import assert from "node:assert/strict";
 * const [difference] = compareFormularies(draftFormulary, { ...draftFormulary, title: "Ours" });
 * assert.equal(difference?.field, "title");
 * assert.equal(difference?.to, "Ours");
 * ```
 */
export function compareFormularies(before: Formulary, after: Formulary): Difference[] {
  return comparePart(before, after, []);
}

/** Two versions of one part: its own fields, then the parts it has. */
function comparePart(before: object, after: object, place: readonly string[]): Difference[] {
  const [a, b] = [before, after] as [Loose, Loose];
  const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])];
  const isParts = (key: string): boolean =>
    areNamed(a[key] ?? []) && areNamed(b[key] ?? []) && key in MEMBERS;
  const own = (part: Loose): object =>
    Object.fromEntries(Object.entries(part).filter(([key]) => !isParts(key)));
  return [
    ...compareReadable(readableFields(own(a)), readableFields(own(b)), place.join(", ") || "formulary", []),
    ...keys
      .filter(isParts)
      .flatMap((key) => compareMembers((a[key] ?? []) as Named[], (b[key] ?? []) as Named[], key, place)),
  ];
}

function compareMembers(
  before: readonly Named[],
  after: readonly Named[],
  list: string,
  place: readonly string[],
): Difference[] {
  const name = (id: string): string => (list === "medicines" ? id : `${MEMBERS[list] ?? list} ${id}`);
  const where = place.join(", ") || "formulary";
  const differences = before.flatMap((part): Difference[] => {
    const other = after.find(({ id }) => id === part.id);
    if (other === undefined) return [{ place: where, field: name(part.id), change: "removed" }];
    return comparePart(part, other, [...place, name(part.id)]);
  });
  const isNew = ({ id }: Named): boolean => !before.some((part) => part.id === id);
  const added = after
    .filter(isNew)
    .map(({ id }): Difference => ({ place: where, field: name(id), change: "added" }));
  const kept = (parts: readonly Named[], others: readonly Named[]): string[] =>
    parts.map(({ id }) => id).filter((id) => others.some((other) => other.id === id));
  const [from, to] = [kept(before, after).join(", "), kept(after, before).join(", ")];
  const moved: Difference[] =
    from === to ? [] : [{ place: where, field: `order of ${words(list)}`, change: "changed", from, to }];
  return [...differences, ...added, ...moved];
}

function compareReadable(
  before: Readable | undefined,
  after: Readable | undefined,
  place: string,
  path: readonly string[],
): Difference[] {
  if (canonicalJson(before ?? null) === canonicalJson(after ?? null)) return [];
  const field = path.join(", ");
  if (isGroup(before) && isGroup(after)) {
    return [...new Set([...Object.keys(before), ...Object.keys(after)])].flatMap((key) =>
      compareReadable(before[key], after[key], place, [...path.filter((part) => part !== "rule"), key]),
    );
  }
  if (Array.isArray(before) && Array.isArray(after)) return compareLists(before, after, place, path);
  if (before === undefined) return present(after, place, field, "added");
  if (after === undefined) return present(before, place, field, "removed");
  return [{ place, field, change: "changed", from: leaf(before), to: leaf(after) }];
}

/** Lists without names: by their place where they are as long, else by what stands in one and not in the other. */
function compareLists(
  before: readonly Readable[],
  after: readonly Readable[],
  place: string,
  path: readonly string[],
): Difference[] {
  if (before.length === after.length) {
    return before.flatMap((item, index) =>
      compareReadable(item, after[index], place, [...path, `number ${index + 1}`]),
    );
  }
  const without = (list: readonly Readable[], others: readonly Readable[]): Readable[] => {
    const texts = others.map((other) => canonicalJson(other));
    return list.filter((item) => !texts.includes(canonicalJson(item)));
  };
  const field = path.join(", ");
  return [
    ...without(before, after).flatMap((item) => present(item, place, field, "removed")),
    ...without(after, before).flatMap((item) => present(item, place, field, "added")),
  ];
}

function present(
  value: Readable | undefined,
  place: string,
  field: string,
  change: "added" | "removed",
): Difference[] {
  if (value === undefined) return [];
  return [{ place, field, change, ...(change === "added" ? { to: leaf(value) } : { from: leaf(value) }) }];
}

/** One value to show: a group as its fields, one after another. */
function leaf(value: Readable): string | Dose {
  if (typeof value === "string" || isDose(value)) return value;
  return canonicalJson(value)
    .replace(/["{}[\]]/g, "")
    .replaceAll(",", ", ")
    .replaceAll(":", " ");
}

function isGroup(value: Readable | undefined): value is Readonly<Record<string, Readable>> {
  return typeof value === "object" && !Array.isArray(value) && !isDose(value);
}

function areNamed(value: unknown): boolean {
  return (
    Array.isArray(value) && value.every((item) => typeof item === "object" && item !== null && "id" in item)
  );
}
