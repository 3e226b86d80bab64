import { computeEquipment } from "@steelyard/core/equipment";
import { computeSigns } from "@steelyard/core/signs";
import { renderToString } from "preact-render-to-string";
import { describe, expect, test } from "vitest";
import { LookupLines } from "./lookup-lines.tsx";

const text = (html: string): string =>
  html
    .replaceAll(/<[^>]*>/g, " ")
    .replaceAll(/[\s\u00a0]+/g, " ")
    .trim();

function shown(
  group: "equipment" | "signs",
  child: Parameters<typeof computeEquipment>[0],
  printing = false,
) {
  const lookups = { equipment: computeEquipment(child), signs: computeSigns(child) };
  return text(renderToString(<LookupLines group={group} lookups={lookups} printing={printing} />));
}

describe("LookupLines", () => {
  const unknownAge = { lengthCm: 136, armMm: 190, totalKg: 28.4, idealKg: 29.8 };

  test("shows each size with what it rests on, and the height-age once", () => {
    const seen = shown("equipment", unknownAge);
    expect(seen).toContain(
      "Tracheal tube, cuffed 6.0 mm by length; 5.5 mm and 6.5 mm ready; or 5.5 mm Tracheal tube, uncuffed",
    );
    expect(seen).toContain("Blood-pressure cuff 9 cm wide, 27 cm long by arm circumference");
    expect(seen.match(/Age not known: by height-age/g)).toHaveLength(1);
    expect(seen).toContain("by published rules that nobody at this site has signed");
  });

  test("opens on paper to working, other rules, notes and verification", () => {
    const seen = shown("equipment", unknownAge, true);
    expect(seen).toContain("Working Length 136 cm ÷ 30 + 1.5 = 6.033 mm.");
    expect(seen).toContain("5.5 mm, by height-age (age 9.49 years ÷ 4 + 3)");
    expect(seen).toContain("Measure the cuff pressure");
    expect(seen).toContain("(from memory, to be verified)");
    expect(shown("signs", unknownAge, true)).toContain("Centiles 52 at centile 1 67 at centile 10");
  });

  test("keeps a line without a size and says what it needs", () => {
    expect(shown("equipment", { totalKg: 20 })).toContain(
      "Blood-pressure cuff None Needs arm circumference.",
    );
    expect(shown("signs", { totalKg: 20 })).toContain("Heart rate None Needs age or length.");
  });
});
