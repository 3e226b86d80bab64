import { err, ok, type Result } from "@steelyard/core/result";

/** Why a path leads nowhere: the part of it at which it ends. */
export interface PathIssue {
  readonly at: string;
  readonly reason: "not-there" | "not-a-list" | "already-there";
}

type Json = unknown;

/**
 * A place in a formulary: ids and field names from the top, parted by "/": "medicines/adrenaline/uses/arrest/repeat".
 *
 * A member of a list is named by its id, or by "#1", "#2" where it has none, so that a path still fits when others were
 * added before it.
 */
export function valueAt(root: Json, path: string): Result<Json, PathIssue> {
  let value = root;
  const passed: string[] = [];
  for (const name of path.split("/")) {
    passed.push(name);
    const key = keyOf(value, name);
    if (key === undefined) return err({ at: passed.join("/"), reason: "not-there" });
    value = (value as Record<string | number, Json>)[key];
  }
  return ok(value);
}

/** A copy of root in which the value at the path is another one; a field that is not there yet may be set. */
export function withValueAt(root: Json, path: string, value: Json): Result<Json, PathIssue> {
  const [name = "", ...rest] = path.split("/");
  const key = keyOf(root, name) ?? (rest.length === 0 && isGroup(root) ? name : undefined);
  if (key === undefined) return err({ at: name, reason: "not-there" });
  if (rest.length === 0) return ok(replaced(root, key, value));
  const inner = withValueAt((root as Record<string | number, Json>)[key], rest.join("/"), value);
  if (!inner.ok) return err({ ...inner.error, at: `${name}/${inner.error.at}` });
  return ok(replaced(root, key, inner.value));
}

/** A copy of root without the field or member at the path. */
export function withoutValueAt(root: Json, path: string): Result<Json, PathIssue> {
  const parent = path.includes("/") ? path.slice(0, path.lastIndexOf("/")) : "";
  const name = path.slice(parent === "" ? 0 : parent.length + 1);
  const holder = parent === "" ? ok(root) : valueAt(root, parent);
  if (!holder.ok) return holder;
  const key = keyOf(holder.value, name);
  if (key === undefined) return err({ at: path, reason: "not-there" });
  const rest = Array.isArray(holder.value)
    ? holder.value.filter((_, index) => index !== key)
    : Object.fromEntries(Object.entries(holder.value as object).filter(([field]) => field !== key));
  return parent === "" ? ok(rest) : withValueAt(root, parent, rest);
}

/** A copy of root with one more member at the end of the list at the path. */
export function withMemberAt(root: Json, path: string, member: Json): Result<Json, PathIssue> {
  const list = valueAt(root, path);
  if (!list.ok) return list;
  if (!Array.isArray(list.value)) return err({ at: path, reason: "not-a-list" });
  const id = isGroup(member) ? member.id : undefined;
  if (id !== undefined && list.value.some((other) => isGroup(other) && other.id === id)) {
    return err({ at: `${path}/${String(id)}`, reason: "already-there" });
  }
  return withValueAt(root, path, [...list.value, member]);
}

function keyOf(value: Json, name: string): string | number | undefined {
  if (Array.isArray(value)) {
    const number = /^#([1-9]\d*)$/.exec(name)?.[1];
    const index =
      number === undefined
        ? value.findIndex((item) => isGroup(item) && item.id === name)
        : Number(number) - 1;
    return index >= 0 && index < value.length ? index : undefined;
  }
  return isGroup(value) && Object.hasOwn(value, name) ? name : undefined;
}

function isGroup(value: Json): value is Record<string, Json> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function replaced(holder: Json, key: string | number, value: Json): Json {
  if (Array.isArray(holder)) return holder.map((item, index) => (index === key ? value : item));
  return { ...(holder as object), [key]: value };
}
