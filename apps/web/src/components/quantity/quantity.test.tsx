import { renderToString } from "preact-render-to-string";
import { expect, test } from "vitest";
import { Quantity } from "./quantity.tsx";

const text = (html: string): string => html.replaceAll(/<[^>]*>/g, "").replaceAll("\u00a0", " ");

test("a dose is written by the safe-medication rules", () => {
  expect(text(renderToString(<Quantity dose={{ amount: 0.28, unit: "mg" }} />))).toBe("280 micrograms");
  expect(text(renderToString(<Quantity dose={{ amount: 2.5, unit: "mL", per: "h" }} />))).toBe("2.5 mL/h");
});

test("an estimated weight is written to 0.1 kg, under 3 kg to 0.01 kg", () => {
  expect(text(renderToString(<Quantity kg={28.4028} />))).toBe("28.4 kg");
  expect(text(renderToString(<Quantity kg={28.02} />))).toBe("28 kg");
  expect(text(renderToString(<Quantity kg={2.3456} />))).toBe("2.35 kg");
  expect(text(renderToString(<Quantity fromKg={26.012} toKg={31.234} />))).toBe("26 to 31.2 kg");
});
