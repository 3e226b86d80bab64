import ts from "typescript";
import { describe, expect, it } from "vitest";
import { readTextFiles } from "./support/text-files.ts";

/** Attributes whose text is seen or spoken. */
const spokenAttributes = new Set([
  "aria-label",
  "aria-description",
  "alt",
  "title",
  "placeholder",
  "label",
  "hint",
  "content",
]);

/** The name of the tool is its own in every language, and so are the symbols of units. */
const names = new Set(["Steelyard"]);

/** Words written into a component instead of a catalogue: its text, its spoken attributes, and what an expression in it yields. */
function wordsIn(source: string, file = "planted.tsx"): readonly string[] {
  const tree = ts.createSourceFile(file, source, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX);
  const found: string[] = [];
  const note = (text: string): void => {
    const words = text.replaceAll(/&\w+;|\b(?:cm|mm|kg|mL|FHIR)\b/g, " ").trim();
    if (/\p{L}{2}/u.test(words) && !names.has(words)) found.push(words);
  };
  /** Literals that an expression may yield: through conditions, && and ||, parentheses and templates, not through calls. */
  const yielded = (node: ts.Node): void => {
    if (ts.isStringLiteralLike(node)) note(node.text);
    else if (ts.isTemplateExpression(node)) {
      note(node.head.text);
      for (const span of node.templateSpans) {
        note(span.literal.text);
        yielded(span.expression);
      }
    } else if (ts.isConditionalExpression(node)) {
      yielded(node.whenTrue);
      yielded(node.whenFalse);
    } else if (ts.isParenthesizedExpression(node)) yielded(node.expression);
    else if (ts.isBinaryExpression(node)) {
      const { kind } = node.operatorToken;
      if (
        kind === ts.SyntaxKind.PlusToken ||
        kind === ts.SyntaxKind.QuestionQuestionToken ||
        kind === ts.SyntaxKind.BarBarToken
      )
        yielded(node.left);
      if (
        kind !== ts.SyntaxKind.EqualsEqualsEqualsToken &&
        kind !== ts.SyntaxKind.ExclamationEqualsEqualsToken
      )
        yielded(node.right);
    }
  };
  const visit = (node: ts.Node): void => {
    if (ts.isJsxText(node)) note(node.text);
    else if (ts.isJsxExpression(node) && node.expression !== undefined && !ts.isJsxAttribute(node.parent)) {
      yielded(node.expression);
    } else if (ts.isJsxAttribute(node) && spokenAttributes.has(node.name.getText(tree))) {
      const { initializer } = node;
      if (initializer !== undefined && ts.isStringLiteral(initializer)) note(initializer.text);
      else if (
        initializer !== undefined &&
        ts.isJsxExpression(initializer) &&
        initializer.expression !== undefined
      )
        yielded(initializer.expression);
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

describe("components hold no visible words of their own", () => {
  const components = readTextFiles(["apps/web/src/**/*.tsx"]).filter(({ file }) => !file.includes(".test."));

  it("there are components to look at", () => {
    expect(components.length).toBeGreaterThan(30);
  });

  it.each(components)("$file", ({ file, text }) => {
    expect(wordsIn(text, file)).toEqual([]);
  });
});

describe("the check", () => {
  it.each([
    ["text", "<p>Draw up now</p>", ["Draw up now"]],
    ["a literal", '<p>{"Draw up"}</p>', ["Draw up"]],
    ["a condition", '<p>{late ? "Overdue" : messages.now}</p>', ["Overdue"]],
    ["an and", '<p>{late && "Overdue"}</p>', ["Overdue"]],
    ["a template", "<p>{`\u0024{n} doses`}</p>", ["doses"]],
    ["a spoken attribute", '<button aria-label="Close" />', ["Close"]],
    ["a spoken expression", "<img alt={`Drawing of \u0024{what}`} />", ["Drawing of"]],
  ])("catches %s", (_, source, words) => {
    expect(wordsIn(`const planted = ${source};`)).toEqual(words);
  });

  it.each([
    ["words of a catalogue", "<p>{messages.sheet}</p>"],
    ["the way a line is drawn", '<path d="M2 8h28M7 8v-4" class="beam__bar" />'],
    ["a comparison", '<p>{kind === "notice" && sentence}</p>'],
    ["what a call is given", '<a href={addressOf({ screen: "reader" })}>{write("armMm")}</a>'],
    ["spaces and signs", '<p>{"\\u00a0"}: {sum} ± 5 %</p>'],
  ])("lets pass %s", (_, source) => {
    expect(wordsIn(`const fine = ${source};`)).toEqual([]);
  });
});
