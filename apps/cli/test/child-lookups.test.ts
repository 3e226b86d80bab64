import { describe, expect, it, vi } from "vitest";
import { callSteelyard } from "./call-steelyard.ts";

const child = (...args: string[]) => callSteelyard(["child", ...args]);

// Each test starts the command, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

describe("steelyard child, equipment and normal signs", () => {
  it("prints both within 80 columns, with other rules, notes and one word on the height-age", async () => {
    const { stdout } = await child("--length-cm", "136", "--arm-mm", "190");
    const text = stdout.slice(stdout.indexOf("== Equipment =="));
    const squeezed = text.replaceAll(/\s+/g, " ");
    expect(squeezed).toContain("Tracheal tube, cuffed: 6.0 mm, by length (length 136 cm ÷ 30 + 1.5)");
    expect(squeezed).toContain("5.5 mm and 6.5 mm ready or 5.5 mm, by height-age");
    expect(squeezed).toContain("Blood-pressure cuff: 9 cm wide, 27 cm long, by arm circumference");
    expect(squeezed).toContain("== Normal signs == Published values of healthy children at rest");
    expect(squeezed).toMatch(/Heart rate: 67 to 103 per minute, 10th to 90th centile, by height-age/);
    expect(squeezed.match(/Age not known: by height-age/g)).toHaveLength(2);
    expect(text.split("\n").filter((line) => line.length > 80)).toEqual([]);
  });

  it("names what a line needs and never drops one", async () => {
    const linesOf = async (...args: string[]): Promise<string[]> =>
      (await child(...args)).stdout
        .split("\n")
        .filter((line) => /^ {2}[A-Z][^|]*:/.test(line))
        .map((line) => line.split(":")[0] ?? "");
    const all = await linesOf("--length-cm", "136", "--arm-mm", "190", "--age", "9y");
    expect(await linesOf("--weight-kg", "20")).toEqual(all);
    expect(all.length).toBeGreaterThan(25);
    expect((await child("--weight-kg", "20")).stdout).toContain("Chest drain: none. Needs age or length.");
  });

  it("gives the JSON keys of the contract", async () => {
    const { equipment, signs } = JSON.parse(
      (await child("--length-cm", "136", "--arm-mm", "190", "--json")).stdout,
    );
    const tube = equipment.find(({ id }: { id: string }) => id === "tracheal-tube.cuffed");
    expect(Object.keys(tube).sort()).toEqual(
      [
        "alternatives",
        "id",
        "item",
        "kind",
        "notes",
        "ready",
        "rests",
        "sources",
        "unit",
        "value",
        "warnings",
      ]
        .concat("working")
        .sort(),
    );
    const rate = signs.find(({ id }: { id: string }) => id === "heart-rate");
    expect(rate).toMatchObject({ sign: "heart-rate", value: { low: 67, high: 103 }, unit: "/min" });
    expect(rate.centiles).toHaveLength(7);
  });
});
