import { describe, expect, it, vi } from "vitest";
import { callSteelyard } from "./call-steelyard.ts";
import { runSteelyard } from "./run-steelyard.ts";

const child = (...args: string[]) => callSteelyard(["child", ...args]);

// Each test starts the command once or more, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

describe("steelyard child", () => {
  it("prints weights, sheet, draft banner, cautions and versions within 80 columns", async () => {
    const { status, stdout, stderr } = await child("--length-cm", "136", "--arm-mm", "190");
    expect(status).toBe(0);
    expect(stderr).toBe("");
    expect(stdout).toMatch(/Total weight +\d\d(\.\d)? kg {3}95 % range/);
    expect(stdout).toMatch(/Ideal weight +\d\d(\.\d)? kg/);
    expect(stdout).toContain("Estimated from length and arm circumference.");
    expect(stdout).toContain("DRAFT FORMULARY, NOT SIGNED");
    expect(stdout).toMatch(
      /adrenaline \| cardiac arrest \| IV or IO\n +>> \d+ micrograms = [\d.]+ mL of 0\.1 mg\/mL/,
    );
    expect(stdout).toContain("Weigh the child as");
    expect(stdout).toContain("Not a certified medical device.");
    expect(stdout.replaceAll(/\s+/g, " ")).toMatch(
      /steelyard \d+\.\d+\.\d+, body model .+, formulary .+ \(draft, not signed; fingerprint [0-9a-f]{16}\)/,
    );
    expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
  });

  // The trade's own example, common practice with no source: ideal weight 30 kg and an arm of 190 mm make about 28 kg.
  it("takes a child of ideal weight 30 kg with an arm of 190 mm for about 28 kg", async () => {
    const { weight } = JSON.parse((await child("--length-cm", "136", "--arm-mm", "190", "--json")).stdout);
    expect(Math.abs(weight.idealKg - 30)).toBeLessThan(1);
    expect(Math.abs(weight.totalKg - 28)).toBeLessThan(1);
    expect(weight.low95Kg).toBeLessThan(28);
    expect(weight.high95Kg).toBeGreaterThan(28);
  });

  it("gives the JSON keys of the contract", async () => {
    const { status, stdout, stderr } = await child(
      "--length-cm",
      "136",
      "--arm-mm",
      "190",
      "--sex",
      "f",
      "--age",
      "9y",
      "--json",
    );
    expect(status).toBe(0);
    expect(stderr).toBe("");
    const report = JSON.parse(stdout);
    expect(Object.keys(report)).toEqual([
      "weight",
      "sheet",
      "equipment",
      "signs",
      "warnings",
      "nextMeasurements",
      "versions",
    ]);
    expect(Object.keys(report.weight)).toEqual([
      "totalKg",
      "low95Kg",
      "high95Kg",
      "idealKg",
      "adjustedKg",
      "leanKg",
      "rests",
    ]);
    expect(report.weight.rests).toEqual(expect.arrayContaining(["lengthCm", "armMm", "ageMonths", "sex"]));
    expect(Object.keys(report.versions)).toEqual(expect.arrayContaining(["software", "model", "formulary"]));
    expect(report.sheet.length).toBeGreaterThanOrEqual(14);
    for (const line of report.sheet) {
      const always = ["id", "medicine", "use", "route", "working", "warnings", "sources"];
      const keys = line.unavailable === undefined ? [...always, "basis", "dose"] : [...always, "unavailable"];
      expect(Object.keys(line), line.id).toEqual(expect.arrayContaining(keys));
    }
    const arrest = report.sheet.find(({ id }: { id: string }) => id === "adrenaline.arrest");
    expect(arrest.dose).toEqual({ amount: expect.any(Number), unit: "microgram" });
    expect(arrest.volume).toMatchObject({ ml: expect.any(Number), strength: "0.1 mg/mL" });
    const infusion = report.sheet.find(({ rate }: { rate?: unknown }) => rate !== undefined);
    expect(infusion.rate).toEqual({ mlPerH: expect.any(Number), concentration: expect.any(String) });
  });

  it("reckons the fluid of a burn from its share of the body surface, and not without it", async () => {
    const of = async (...args: string[]) => {
      const { sheet } = JSON.parse((await child("--weight-kg", "20", ...args, "--json")).stdout);
      return sheet.find(({ id }: { id: string }) => id === "balanced-crystalloid.burns");
    };
    const burnt = await of("--burn-percent", "15 %");
    // 3 mL/kg for each 1 %: 900 mL, half of it in the first 8 hours.
    expect(burnt.dose).toEqual({ amount: 900, unit: "mL" });
    expect(burnt.portions[0]).toEqual({ ml: 450, overH: 8, mlPerH: 56.2 });
    expect((await of()).unavailable).toEqual({
      type: "burn-percent-missing",
      perPercent: { amount: 60, unit: "mL" },
    });
    const { stdout } = await child("--weight-kg", "20", "--burn-percent", "15");
    expect(stdout.replace(/\s+/g, " ")).toContain(
      "450 mL over 8 h, 56.2 mL/h; then 450 mL over 16 h, 28.1 mL/h.",
    );
  });

  it("says what one more measurement would buy, narrowest first, and nothing where the child was weighed", async () => {
    const args = ["--length-cm", "136", "--arm-mm", "190"];
    const { nextMeasurements, weight } = JSON.parse((await child(...args, "--json")).stdout);
    const now = (50 * (weight.high95Kg - weight.low95Kg)) / weight.totalKg;
    const widths = nextMeasurements.map(
      ({ halfWidthPercent }: { halfWidthPercent: number }) => halfWidthPercent,
    );
    expect(widths.length).toBeGreaterThan(1);
    expect(widths).toEqual([...widths].sort((a, b) => a - b));
    expect(Math.max(...widths)).toBeLessThan(now);
    const [{ measurement, halfWidthPercent }] = nextMeasurements;
    expect(measurement).toMatch(/^(waist|thigh|calf)Cm$/);
    expect((await child(...args)).stdout).toContain(
      `Measuring the ${measurement.replace("Cm", "")} would narrow the range to about ±${Math.round(halfWidthPercent)} %.`,
    );
    const weighed = await child(...args, "--weight-kg", "28", "--json");
    expect(JSON.parse(weighed.stdout).nextMeasurements).toEqual([]);
  });

  it("widens the range for a length taken seated by one, and narrows it again by more readings", async () => {
    const width = async (...more: string[]): Promise<number> => {
      const { weight } = JSON.parse(
        (await child("--length-cm", "136", "--arm-mm", "190", ...more, "--json")).stdout,
      );
      return weight.high95Kg - weight.low95Kg;
    };
    const seated = ["--posture", "seated", "--people", "1"];
    const once = await width(...seated);
    expect(once).toBeGreaterThan(await width());
    expect(await width(...seated, "--length-readings", "4")).toBeLessThan(once);
  });

  it("takes a segment for a length, an earlier weight, oedema and pregnancy, and says how", async () => {
    const segment = (await child("--knee-height-cm", "40", "--arm-mm", "190", "--oedema")).stdout;
    expect(segment).toContain("! Length was worked out from knee height as 132.5 cm");
    expect(segment).toContain("Arm circumference was left out, as oedema adds to it.");
    const half = (await child("--length-cm", "136", "--arm-mm", "190", "--earlier-kg", "25")).stdout;
    expect(half.replaceAll(/\s+/g, " ")).toContain(
      "Earlier weight was given but not used, as the age at the earlier weight is missing.",
    );
    const args = ["--length-cm", "136", "--age", "9y", "--earlier-kg", "25", "--earlier-age", "8y"];
    expect(JSON.parse((await child(...args, "--json")).stdout).weight.rests).toContain("earlier");
    expect((await child("--length-cm", "136", "--pregnant")).stdout).toContain("! Pregnancy:");
  });

  it("lets a scale weight replace the estimate, with and without a length", async () => {
    const both = JSON.parse((await child("--weight-kg", "28,4", "--length-cm", "136", "--json")).stdout);
    expect(both.weight).toMatchObject({ totalKg: 28.4, low95Kg: 28.4, high95Kg: 28.4, rests: ["scaleKg"] });
    expect(both.weight.idealKg).toBeGreaterThan(25);
    const alone = await child("--weight-kg", "28.4");
    expect(alone.status).toBe(0);
    expect(alone.stdout).toContain("Read from the scale.");
    expect(alone.stdout).toContain("Ideal weight     not known");
  });

  it("accepts units and comma decimals, and says how it took them", async () => {
    const text = await child("--length-cm", "1,36 m", "--arm-mm", "19 cm");
    expect(text.status).toBe(0);
    expect(text.stdout).toContain('! Length "1,36 m" was taken as 136 cm.');
    const json = await child("--length-cm", "1,36 m", "--arm-mm", "19 cm", "--json");
    expect(json.stderr).toContain('Arm circumference "19 cm" was taken as 190 mm.');
    const plain = await child("--length-cm", "136", "--arm-mm", "190", "--json");
    expect(json.stdout).toBe(plain.stdout);
  });

  it("takes build and the carer's word into the estimate, and names what cannot be of this child", async () => {
    const agreed = await child(
      "--length-cm",
      "136",
      "--arm-mm",
      "190",
      "--build",
      "thin",
      "--carer-kg",
      "28",
      "--json",
    );
    expect(JSON.parse(agreed.stdout).weight.rests).toEqual(["lengthCm", "armMm", "carerKg", "build"]);
    const pounds = await child("--length-cm", "136", "--arm-mm", "190", "--carer-kg", "62");
    // 62 lb are 28 kg: the likely slip is told with its correction, and not applied.
    expect(pounds.stdout.replace(/\s+/g, " ")).toMatch(/Did you mean 62 lb/);
    expect(pounds.stdout).toContain("! Weight stated by the carer 62 kg does not fit the other measurements");
  });
});

describe("steelyard child refuses with a sentence and a status", () => {
  const cm = ["--length-cm", "136"];
  it.each([
    [1, ["--arm-mm", "190"], "Length is needed"],
    [
      1,
      ["--length-cm", "1.36"],
      'Did you mean 1.36 m (136 cm) or 1.36 ft (41.45 cm)? If so, give the unit: --length-cm "1.36 m"',
    ],
    [1, ["--length-cm", "30"], "Length 30 cm is outside the range that the body model serves, 45 to 205 cm"],
    [1, ["--length-cm", "1000000000"], "every child's lies within 18 to 310 cm"],
    [1, ["--length-cm", "1e9"], "every child's lies within 18 to 310 cm"],
    [
      1,
      [...cm, "--arm-mm", "19"],
      'Did you mean 19 cm (190 mm) or 19 in (482.6 mm)? If so, give the unit: --arm-mm "19 cm"',
    ],
    [1, [...cm, "--arm-mm", "-190"], "must be more than 0 mm"],
    [
      1,
      [...cm, "--arm-mm", "800"],
      "Arm circumference 800 mm is outside the range that the body model serves",
    ],
    [1, ["--length-cm", "190", "--arm-mm", "136"], "If so: --length-cm 136 --arm-mm 190"],
    [1, [...cm, "--age", "30y"], "Age 30 years is outside what this tool is for: birth to 20 years."],
    [2, ["--length-cm", ""], "No length was entered."],
    [2, ["--length-cm", "abc"], '"abc" is not a number'],
    [2, ["--length-cm", "1,360"], '"1,360" has two readings'],
    [2, ["--length-cm", "136 140"], '"136 140" holds more than one number'],
    [2, ["--length-cm", "136 kg"], '"kg" is not a unit of length: use mm, cm, m, in or ft.'],
    [2, ["--length-cm", "136", "--length-cm", "140"], 'given twice, as "136" and "140"'],
    [2, [...cm, "--age", "9"], "Did you mean 9 days, 9 weeks, 9 months or 9 years?"],
    [2, [...cm, "--people", "3"], '"3" is no number of people measuring: use 1 or 2.'],
    [2, [...cm, "--arm-step-mm", "3"], '"3" is no step of the arm tape: use 1, 2, 5 or 10.'],
    [2, [...cm, "--earlier-age", "8"], 'Age at the earlier weight "8" has no unit'],
    [1, ["--ulna-cm", "20"], "Ulna length gives a length only together with the age"],
    [
      1,
      ["--knee-height-cm", "400"],
      'Did you mean 400 mm (40 cm)? If so, give the unit: --knee-height-cm "400 mm"',
    ],
    [
      1,
      [...cm, "--burn-percent", "140"],
      "The burnt share of the body surface must be above 0 and at most 100 %: 140 % was entered.",
    ],
    [2, [...cm, "--burn-percent", "lots"], '"lots" is not a share of the body surface'],
    [2, [...cm, "--sex", "x"], '"x" is no sex: use f or m.'],
    [2, [], "No measurement was given."],
    [2, ["--lenght-cm", "136"], "Did you mean --length-cm?"],
    [2, ["--length-cm"], "argument missing"],
    [2, ["136", "190"], "too many arguments"],
  ] as const)("%d: child %j", async (status, args, sentence) => {
    const run = await child(...args);
    expect(run.stderr).toContain(sentence);
    expect(run.status).toBe(status);
    expect(run.stdout).toBe("");
  });

  it("and names every field that is wrong", async () => {
    const { stderr } = await child("--length-cm", "abc", "--arm-mm", "19");
    expect(stderr).toContain("--length-cm:");
    expect(stderr).toContain("--arm-mm:");
  });
});

describe("steelyard", () => {
  it("ends a process of its own with the status of its contract", () => {
    expect(runSteelyard(["child", "--length-cm", "30"])).toMatchObject({ status: 1, stdout: "" });
    expect(runSteelyard(["frobnicate"])).toMatchObject({ status: 2, stdout: "" });
  });

  it("prints its versions", async () => {
    const { status, stdout } = runSteelyard(["--version"]);
    expect(status).toBe(0);
    expect(stdout).toMatch(/^steelyard \d+\.\d+\.\d+\nbody model .+\nformulary .+ \(draft, not signed\)\n$/);
  });

  it.each([
    [["--help"]],
    [["child", "--help"]],
    [["weigh", "--help"]],
    [["calibrate", "--help"]],
    [["help", "weigh"]],
  ])("%j explains exit status and carries the cautions, within 80 columns", async (args) => {
    const { status, stdout } = await callSteelyard(args);
    expect(status).toBe(0);
    expect(stdout).toContain("Exit status:");
    expect(stdout).toContain("Weigh the child as soon as");
    expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
  });

  it.each([[[]], [["frobnicate"]], [["--frobnicate"]]])("%j is wrong usage", async (args) => {
    const { status, stdout } = await callSteelyard(args);
    expect(status).toBe(2);
    expect(stdout).toBe("");
  });
});
