import { describe, expect, it, vi } from "vitest";
import { callSteelyard } from "./call-steelyard.ts";
import { temporaryFolder } from "./run-steelyard.ts";

vi.setConfig({ testTimeout: 60_000 });

const single = (text: string): string => text.replaceAll(/\s+/g, " ");

function given(content: string, ...args: string[]) {
  const folder = temporaryFolder();
  folder.write("doses", content);
  return callSteelyard(["given", "doses", "--weight-kg", "18", ...args], { cwd: folder.path });
}

const TABLE = "line,amount,unit,at\n";

describe("steelyard given", () => {
  it("sums the doses and says when the next is due, past midnight too", async () => {
    const { status, stdout } = await given(
      `${TABLE}adrenaline.arrest,180,micrograms,23:50\nadrenaline.arrest,0.18,mg,23:56\nparacetamol.pain-iv,270,mg,22:00\n`,
    );
    expect(status).toBe(0);
    const text = single(stdout);
    expect(text).toContain("adrenaline | cardiac arrest 2 doses, 360 micrograms in all");
    expect(text).toContain(">> next from 23:59 to 00:01 the next day");
    expect(text).toContain("at most 1,080 mg in 24 h: 810 mg left");
    expect(text).toContain("DRAFT FORMULARY, NOT SIGNED");
  });

  it("warns of doses too soon, above the single maximum, and of lines it does not know", async () => {
    const { stdout } = await given(
      `${TABLE}adrenaline.arrest,180,microgram,0\nadrenaline.arrest,2,mg,2\nnobody.knows,1,mg,3\n`,
    );
    const text = single(stdout);
    expect(text).toContain("! minute 2: Given 1 min before it was due.");
    expect(text).toContain("! minute 2: 2 mg was given, above the single maximum of 1 mg.");
    expect(text).toContain("! minute 3: nobody.knows is not in this formulary");
  });

  it("reads JSON as the library writes it, and gives JSON", async () => {
    const records = [{ lineId: "adrenaline.arrest", dose: { amount: 180, unit: "microgram" }, atMinutes: 0 }];
    const { stdout } = await given(JSON.stringify(records), "--json");
    const { lines, versions } = JSON.parse(stdout);
    expect(lines[0].nextDue).toEqual({ earliestMinutes: 3, latestMinutes: 5 });
    expect(versions.formularySigned).toBe(false);
  });

  it("lists every fault with its place, and counts nothing", async () => {
    const { status, stdout, stderr } = await given(
      "line;amount;unit;at\nadrenaline;0;mcg;25:00\nadrenaline.arrest;1,5;mg;3\nadrenaline.arrest;1;mg;10:00\n",
    );
    expect({ status, stdout }).toEqual({ status: 1, stdout: "" });
    expect(stderr).toContain("doses has 5 faults; nothing of it was taken.");
    expect(stderr).toContain(
      'dose 1, line: must be the id of a line, such as adrenaline.arrest: it is "adrenaline"',
    );
    expect(stderr).toContain('dose 1, amount: must be a number above 0: it is "0"');
    expect(stderr).toContain("dose 1, unit: must be one of g, mg");
    expect(stderr).toContain("dose 1, at: must be a time of day (14:05) or minutes");
    expect(stderr).toContain("at: has times of day and minutes");
  });

  it.each([
    ["line,amount,at\n", "column unit is missing"],
    [TABLE, "line 1: has no dose"],
    ["[{]", "is not JSON"],
    ["{}", "must be a list of doses"],
    [`${TABLE}a.b,1,mg\n`, "is no table"],
  ])("refuses %j", async (content, message) => {
    const { status, stderr } = await given(content);
    expect(status).toBe(1);
    expect(stderr).toContain(message);
  });
});
