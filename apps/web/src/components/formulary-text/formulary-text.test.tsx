import { render } from "preact-render-to-string";
import { afterEach, expect, test } from "vitest";
import { french } from "../../messages/french.ts";
import { speak } from "../../messages/language.ts";
import { FormularyTag, FormularyText } from "./formulary-text.tsx";

afterEach(() => speak(undefined));

const written = (tag: string): string =>
  render(
    <FormularyTag.Provider value={tag}>
      <FormularyText>buccal</FormularyText>
    </FormularyTag.Provider>,
  );

test("marks words of a formulary where the page has another language, and only there", () => {
  expect(written("en")).toBe("buccal");
  expect(written("fr")).toBe('<span lang="fr">buccal</span>');
  speak(french);
  expect(written("en")).toBe('<span lang="en">buccal</span>');
  expect(written("fr")).toBe("buccal");
});
