import { readFileSync } from "node:fs";
import { join } from "node:path";
import { createGenerator } from "@steelyard/study/bootstrap";
import { expect, it } from "vitest";
import { evidenceLine, judgeSurvey, openSurvey, surveyFiles } from "../bench/judge-surveys.ts";
import { repositoryRoot } from "../scripts/read-workspaces.ts";

const folder = process.env.STEELYARD_DATA;
const csv = readFileSync(join(repositoryRoot, "docs/evidence/accuracy.csv"), "utf8");

it("docs/evidence holds every open survey file, tidied or as the CDC gives it", () => {
  for (const survey of ["dist.ex01", "2017-2020P", "BMX_C.XPT", "BMX_I.XPT"]) expect(csv).toContain(survey);
});

it.skipIf(folder === undefined)(
  "docs/evidence says what a sample of two surveys by seed gives now, to the last digit (needs STEELYARD_DATA)",
  { timeout: 60_000 },
  async () => {
    const file = surveyFiles[0];
    if (file === undefined) throw new Error("no survey file");
    const study = await openSurvey(folder ?? "", file);
    const groups = [...(study.table.words.get(file.by)?.levels ?? [])].filter((group) =>
      csv.includes(`"${group}"`),
    );
    expect(groups.length).toBeGreaterThan(10);
    const { uniform } = createGenerator(20261125);
    for (let i = 0; i < 2; i++) {
      const [group = ""] = groups.splice(Math.floor(uniform() * groups.length), 1);
      const lines = judgeSurvey(study, { by: file.by, group }).map((own) => evidenceLine(group, own));
      expect(lines.length).toBeGreaterThan(0);
      for (const line of lines) expect(csv.split("\n")).toContain(line);
    }
  },
);
