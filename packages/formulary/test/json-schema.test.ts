import { draftFormulary, validateFormulary } from "@steelyard/formulary";
import { describe, expect, it } from "vitest";
import schema from "../schemas/formulary.schema.json" with { type: "json" };

// biome-ignore lint/suspicious/noExplicitAny: a schema and what it judges have any shape
type Json = any;

/** What is wrong with a value by the rules of JSON Schema, draft 7, as far as the published schema uses them. */
function faults(value: Json, rules: Json, at = ""): string[] {
  const known = [
    "$schema",
    "$defs",
    "title",
    "$ref",
    "type",
    "enum",
    "const",
    "pattern",
    "format",
    "minLength",
    "minimum",
    "maximum",
    "exclusiveMinimum",
    "minItems",
    "required",
    "additionalProperties",
    "properties",
    "items",
    "oneOf",
    "anyOf",
    "not",
  ];
  const unknown = Object.keys(rules).filter((key) => !known.includes(key));
  if (unknown.length > 0)
    throw new Error(`the schema uses ${unknown.join(", ")}, which this test does not judge`);
  if (rules.$ref !== undefined) {
    const name = /^#\/\$defs\/(.+)$/.exec(rules.$ref)?.[1] ?? "";
    return faults(value, (schema as Json).$defs[name], at);
  }
  for (const [key, least] of [
    ["oneOf", 1],
    ["anyOf", 1],
  ] as const) {
    if (rules[key] === undefined) continue;
    const fitting = rules[key].filter((each: Json) => faults(value, each, at).length === 0).length;
    const isFit = key === "oneOf" ? fitting === least : fitting >= least;
    if (!isFit) return [`${at} fits ${fitting} of ${key}`];
  }
  const found: string[] = [];
  const fail = (rule: string): void => {
    found.push(`${at} ${rule}`);
  };
  if (rules.not !== undefined && faults(value, rules.not, at).length === 0) fail("not");
  const kind = Array.isArray(value) ? "array" : value === null ? "null" : typeof value;
  const isType =
    rules.type === undefined || rules.type === kind || (rules.type === "integer" && Number.isInteger(value));
  if (!isType) return [`${at} is ${kind}, not ${rules.type}`];
  if (rules.enum !== undefined && !rules.enum.includes(value)) fail("enum");
  if (rules.const !== undefined && rules.const !== value) fail("const");
  if (kind === "string") {
    if (rules.pattern !== undefined && !new RegExp(rules.pattern, "u").test(value)) fail("pattern");
    if (value.length < (rules.minLength ?? 0)) fail("minLength");
  }
  if (kind === "number") {
    if (value < (rules.minimum ?? value) || value > (rules.maximum ?? value)) fail("range");
    if (rules.exclusiveMinimum !== undefined && value <= rules.exclusiveMinimum) fail("exclusiveMinimum");
  }
  if (kind === "array") {
    if (value.length < (rules.minItems ?? 0)) fail("minItems");
    value.forEach((item: Json, index: number) => {
      found.push(...(rules.items ? faults(item, rules.items, `${at}/${index}`) : []));
    });
  }
  if (kind === "object") {
    for (const name of rules.required ?? []) if (!(name in value)) fail(`lacks ${name}`);
    for (const [name, member] of Object.entries(value)) {
      const own = rules.properties?.[name];
      if (own !== undefined) found.push(...faults(member, own, `${at}/${name}`));
      else if (rules.additionalProperties === false) fail(`has ${name}`);
    }
  }
  return found;
}

describe("the published JSON Schema", () => {
  it("accepts the draft", () => {
    expect(faults(structuredClone(draftFormulary), schema)).toEqual([]);
  });

  it.each<[string, (formulary: Json) => void]>([
    ["a field that is missing", (f) => delete f.medicines[0].uses[0].indication],
    ["a field that is not one", (f) => Object.assign(f.medicines[0], { brand: "x" })],
    ["a unit that is not one", (f) => Object.assign(f.medicines[0].strengths[0], { unit: "mcg" })],
    ["an amount of nothing", (f) => Object.assign(f.medicines[0].strengths[0], { amountPerMl: 0 })],
    ["a number in quotation marks", (f) => Object.assign(f.medicines[0].strengths[0], { amountPerMl: "1" })],
    ["an empty name", (f) => Object.assign(f.medicines[0], { name: "" })],
    ["an id with capitals", (f) => Object.assign(f.medicines[0], { id: "Adrenaline" })],
    ["a rule of no kind", (f) => delete f.medicines[0].uses[0].options[0].rule.kind],
    ["a use without a dose", (f) => Object.assign(f.medicines[0].uses[0], { options: [] })],
    [
      "a fingerprint that is none",
      (f) => Object.assign(f, { signOff: { name: "a", role: "b", date: "2026-11-25", fingerprint: "x" } }),
    ],
  ])("refuses %s, as the validation does", (_, plant) => {
    const formulary: Json = structuredClone(draftFormulary);
    plant(formulary);
    expect(faults(formulary, schema)).not.toEqual([]);
    expect(validateFormulary(formulary).ok).toBe(false);
  });
});
