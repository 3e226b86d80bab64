import type * as v from "valibot";
import type { FormularyFault } from "./formulary-fault.ts";

/** Lists whose members have a name of their own to be called by. */
const MEMBER: Readonly<Record<string, string>> = {
  medicines: "medicine",
  uses: "use",
  options: "option",
  strengths: "strength",
  preparations: "preparation",
  sources: "source",
  bands: "band",
  citations: "source",
};

/** One fault of shape, with its place in names where there are names: "adrenaline, use arrest, default option". */
export function describeSchemaIssue(issue: v.BaseIssue<unknown>): FormularyFault {
  const parts: string[] = [];
  const path = issue.path ?? [];
  path.forEach((item, index) => {
    const key = item.key;
    if (typeof key === "number") {
      const list = String(path[index - 1]?.key ?? "");
      const named = nameOf(item.value) ?? String(key + 1);
      const member = MEMBER[list] ?? words(list);
      parts.push(member === "medicine" && nameOf(item.value) ? named : `${member} ${named}`);
    } else if (index === path.length - 1 || typeof path[index + 1]?.key !== "number") {
      parts.push(words(String(key)));
    }
  });
  return { place: parts.join(", ") || "formulary", message: whatIsWrong(issue) };
}

function nameOf(value: unknown): string | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  const id = "id" in value ? value.id : "sourceId" in value ? value.sourceId : undefined;
  return typeof id === "string" && id !== "" ? id : undefined;
}

/** "defaultOption" becomes "default option". */
function words(key: string): string {
  return key.replace(/([A-Z])/g, " $1").toLowerCase();
}

function whatIsWrong(issue: v.BaseIssue<unknown>): string {
  if (issue.type === "strict_object" && issue.received === "undefined") return "is missing";
  if (issue.type === "strict_object" && issue.expected === "never") return "is not a field of the formulary";
  if (issue.kind === "schema") {
    if (issue.received === "undefined") return "is missing";
    const expected = expectation(issue);
    return `${expected === undefined ? "has the wrong form" : `must be ${expected}`}: it is ${shown(issue.input)}`;
  }
  return `${issue.message}: it is ${shown(issue.input)}`;
}

function expectation({ expected }: v.BaseIssue<unknown>): string | undefined {
  if (expected === null) return undefined;
  const plain: Readonly<Record<string, string>> = {
    number: "a number",
    string: "text",
    boolean: "true or false",
    Array: "a list",
    Object: "a group of fields",
  };
  return plain[expected] ?? `one of ${expected.replace(/[()]/g, "").replaceAll(" | ", ", ")}`;
}

function shown(value: unknown): string {
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : "a list";
  if (typeof value === "object" && value !== null) return "a group of fields";
  return typeof value === "string" ? `"${value}"` : String(value);
}
