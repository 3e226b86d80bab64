import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { linkSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { describe, expect, it, vi } from "vitest";
import { callSteelyard } from "./call-steelyard.ts";
import { BIN, temporaryFolder } from "./run-steelyard.ts";

type Row = Readonly<Record<string, string>>;

const ADDED = ["total_kg", "low95_kg", "high95_kg", "ideal_kg", "notes"];

/** Weighs a text through standard input and output. */
async function weigh(
  input: string | Buffer,
  delimiter = ",",
): Promise<{ status: number | null; stderr: string; rows: Row[]; stdout: string }> {
  const { status, stdout, stderr } = await callSteelyard(["weigh", "-"], { input });
  return { status, stderr, stdout, rows: parse(stdout, { columns: true, delimiter, bom: true }) };
}

// Each test starts the command once or more, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

describe("steelyard weigh", () => {
  it("adds its columns behind all others, which it keeps as they were", async () => {
    const folder = temporaryFolder();
    const input = folder.write(
      "in.csv",
      'id,arm_mm,name,lying_length_cm\n007,190,"Doe, ""J""\nsecond line",136\n8,150,é,100\n',
    );
    const run = await callSteelyard(["weigh", input, "-o", join(folder.path, "out.csv")]);
    expect(run.status).toBe(0);
    expect(run.stdout).toBe("");
    expect(run.stderr).toContain("2 rows: 2 served, 0 marked.");
    expect(run.stderr).toContain("Passed on as they are: id, name.");
    expect(run.stderr).toContain("Weigh the child as soon as you can.");
    const rows: Row[] = parse(folder.read("out.csv"), { columns: true });
    expect(Object.keys(rows[0] ?? {})).toEqual(["id", "arm_mm", "name", "lying_length_cm", ...ADDED]);
    expect(rows[0]).toMatchObject({ id: "007", name: 'Doe, "J"\nsecond line', arm_mm: "190", notes: "" });
    expect(rows[1]).toMatchObject({ name: "é" });
    expect(folder.names(), "nothing else is left").toEqual(["in.csv", "out.csv"]);
  });

  it("gives the same weights as child", async () => {
    const { rows } = await weigh("lying_length_cm,arm_mm,sex,age_months,waist_cm\n136,190,f,108,60\n");
    const args = [
      "--length-cm",
      "136",
      "--arm-mm",
      "190",
      "--sex",
      "f",
      "--age",
      "108mo",
      "--waist-cm",
      "60",
    ];
    const { weight } = JSON.parse((await callSteelyard(["child", ...args, "--json"])).stdout);
    const row = rows[0] as Row;
    for (const [column, kg] of [
      ["total_kg", weight.totalKg],
      ["low95_kg", weight.low95Kg],
      ["high95_kg", weight.high95Kg],
      ["ideal_kg", weight.idealKg],
    ]) {
      expect(Math.abs(Number(row[column]) - kg), column).toBeLessThanOrEqual(0.005_000_1);
    }
  });

  it("reads every measurement and how it was taken, as child does", async () => {
    const columns = {
      lying_length_cm: ["--length-cm", "62"],
      arm_mm: ["--arm-mm", "140"],
      head_cm: ["--head-cm", "41"],
      age_months: ["--age", "5mo"],
      posture: ["--posture", "seated"],
      people: ["--people", "1"],
      length_readings: ["--length-readings", "2"],
      arm_step_mm: ["--arm-step-mm", "5"],
      arm_readings: ["--arm-readings", "3"],
      earlier_kg: ["--earlier-kg", "5.4"],
      earlier_age_months: ["--earlier-age", "3mo"],
      missing_limb: ["--missing-limb", "foot"],
    } as const;
    const entries = Object.entries(columns);
    const cells = entries.map(([, [, text]]) => text.replace("mo", ""));
    const { rows } = await weigh(`${entries.map(([column]) => column).join(",")}\n${cells.join(",")}\n`);
    const { weight } = JSON.parse(
      (await callSteelyard(["child", ...Object.values(columns).flat(), "--json"])).stdout,
    );
    expect(Math.abs(Number(rows[0]?.total_kg) - weight.totalKg)).toBeLessThanOrEqual(0.005_000_1);
    expect(Math.abs(Number(rows[0]?.high95_kg) - weight.high95Kg)).toBeLessThanOrEqual(0.005_000_1);
    expect(rows[0]?.notes).toContain("The missing foot was taken off");
  });

  it("names a likely slip of a row in doubt with what was perhaps meant, and changes nothing", async () => {
    const { rows } = await weigh("lying_length_cm,arm_mm,waist_cm\n53.5,190,55\n136,190,60\n");
    expect(rows[0]?.notes).toContain(
      "Length 53.5 cm is unlikely: it may have been read in inches. Did you mean 53.5 in (135.89 cm)?",
    );
    expect(rows[0]).toMatchObject({ lying_length_cm: "53.5", arm_mm: "190" });
    expect(Number(rows[0]?.total_kg)).toBeLessThan(10);
    expect(rows[1]?.notes).toBe("");
  });

  it("takes a segment of a limb for a length, and oedema as a word", async () => {
    const { rows } = await weigh(
      "knee_height_cm,arm_mm,oedema,ulna_cm\n40,190,no,\n40,190,yes,\n,190,,20\n40,190,perhaps,\n",
    );
    expect(rows[0]?.notes).toContain("Length was worked out from knee height as 132.5 cm");
    expect(rows[1]?.notes).toContain("Arm circumference was left out, as oedema adds to it.");
    expect(rows[2]?.notes).toContain("Ulna length gives a length only together with the age");
    expect(rows[3]?.notes).toContain('"perhaps" does not say whether there is oedema: use yes or no.');
  });

  it("stops at once when it is interrupted, and leaves nothing", async () => {
    const folder = temporaryFolder();
    const command = spawn(process.execPath, [BIN, "weigh", "-", "-o", join(folder.path, "out.csv")]);
    let stderr = "";
    command.stderr.on("data", (chunk: Buffer) => {
      stderr += chunk.toString();
    });
    command.stdin.on("error", () => {});
    command.stdin.write(`ward,lying_length_cm\n${"Larch,136\n".repeat(10_000)}`);
    await vi.waitFor(() => expect(stderr).toContain("Passed on"), { timeout: 30_000 });
    command.kill("SIGINT");
    expect((await once(command, "exit"))[0]).toBe(1);
    expect(stderr).toContain("Interrupted; no result was written.");
    expect(folder.names()).toEqual([]);
  });

  it("marks a bad row in notes and goes on", async () => {
    const { status, rows, stderr } = await weigh(
      [
        "lying_length_cm,arm_mm,sex",
        "136,190,f",
        ",190,f",
        "abc,190,f",
        "136,19,f",
        "190,136,",
        "136,-190,",
        "1e9,190,",
        "136,190,x",
        "136,190,m",
      ].join("\n"),
    );
    expect(status).toBe(0);
    const marks = rows.map(({ total_kg, notes }) => (total_kg === "" ? notes : "served"));
    expect(marks).toEqual([
      "served",
      expect.stringContaining("Length is needed"),
      expect.stringContaining('"abc" is not a number'),
      expect.stringContaining("Did you mean 19 cm (190 mm)"),
      expect.stringContaining("They may have changed places."),
      expect.stringContaining("must be more than 0 mm"),
      expect.stringContaining("cannot be right"),
      expect.stringContaining('"x" is no sex'),
      "served",
    ]);
    expect(stderr).toContain("9 rows: 2 served, 7 marked:");
    expect(stderr).toContain("length missing 1");
  });

  it("takes blanks and the codes of statistics programs as unknown", async () => {
    const { rows } = await weigh("lying_length_cm,arm_mm,sex\n136,NA,.\n136,,\n");
    expect(rows.map(({ total_kg }) => total_kg !== "")).toEqual([true, true]);
    expect(rows[0]?.total_kg).toBe(rows[1]?.total_kg);
    expect(rows[0]?.notes).toContain("No circumference was given");
  });

  it("uses the lying length of two and notes when they disagree by more than 2 cm", async () => {
    const { rows } = await weigh(
      "lying_length_cm,standing_height_cm,arm_mm\n136,135.3,190\n136,120,190\n,135.3,190\n",
    );
    expect(rows.map(({ total_kg }) => total_kg)).toEqual(Array(3).fill(rows[0]?.total_kg));
    expect(rows[0]?.notes).toBe("");
    expect(rows[1]?.notes).toContain("disagree by 15.3 cm");
    expect(rows[2]?.notes).toContain("standing height 135.3 cm + 0.7 cm");
  });

  it("reads semicolons with decimal commas and writes them so", async () => {
    const { rows, stdout } = await weigh("lying_length_cm;arm_mm;place\r\n85,5;150;Nord, Süd\r\n", ";");
    expect(stdout.startsWith("lying_length_cm;arm_mm;place;total_kg;")).toBe(true);
    expect(stdout.split("\r\n")).toHaveLength(3);
    expect(rows[0]).toMatchObject({ place: "Nord, Süd", lying_length_cm: "85,5" });
    expect(rows[0]?.total_kg).toMatch(/^\d+,\d+$/);
    expect((await weigh("lying_length_cm;arm_mm\n85.5;150\n", ";")).rows[0]?.total_kg).toMatch(/^\d+\.\d+$/);
  });

  it("reads tabs, a byte order mark, CRLF, blank lines, quotes and header names in any case", async () => {
    const { rows, stdout, stderr } = await weigh(
      '\ufeff"Lying_Length_CM"\t ARM_MM \r\n\r\n"136"\t190\r\n\r\n',
      "\t",
    );
    expect(stdout.startsWith("\ufeff")).toBe(true);
    expect(rows).toHaveLength(1);
    expect(rows[0]?.total_kg).not.toBe("");
    expect(stderr).toContain("1 row: 1 served");
  });

  it("passes bytes that are no UTF-8 on as they are", async () => {
    const folder = temporaryFolder();
    const latin1 = Buffer.from("name,lying_length_cm\nJosé,136\n", "latin1");
    const { status } = await callSteelyard([
      "weigh",
      folder.write("in.csv", latin1),
      "-o",
      join(folder.path, "out.csv"),
    ]);
    expect(status).toBe(0);
    const out = spawnSync("head", ["-c", "200", join(folder.path, "out.csv")]).stdout;
    expect(out.includes(Buffer.from("José,136,", "latin1"))).toBe(true);
  });

  it("keeps rows that are too short or too long in their columns, with a note", async () => {
    const { rows } = await weigh("lying_length_cm,arm_mm,place\n136,190\n136,190,here,and,there\n");
    expect(rows[0]).toMatchObject({ place: "", notes: "The row has 2 of 3 cells." });
    expect(rows[1]).toMatchObject({
      place: "here",
      notes: "The row has 5 cells and the header 3; left over: and | there.",
    });
    expect(rows.every(({ total_kg }) => total_kg !== "")).toBe(true);
  });

  it("warns of a column that looks like one it reads", async () => {
    const { stderr } = await weigh("lying_length_cm,arm_cm\n136,19\n");
    expect(stderr).toContain(
      'Column "arm_cm" is not read. If it is meant to be, name it arm_mm, in that unit.',
    );
  });

  it("writes the header for a file of a header only", async () => {
    const { status, stdout, stderr } = await weigh("lying_length_cm,arm_mm\n");
    expect(status).toBe(0);
    expect(stdout).toBe(`lying_length_cm,arm_mm,${ADDED.join(",")}\n`);
    expect(stderr).toContain("0 rows");
  });

  it("shows progress when asked", async () => {
    const rows = `136,190\n`.repeat(200_000);
    expect((await weigh(`lying_length_cm,arm_mm\n1\n`)).stderr).not.toMatch(/rows, \d+ %/);
    const folder = temporaryFolder();
    const input = folder.write("in.csv", `lying_length_cm,arm_mm\n${rows}`);
    const run = await callSteelyard(["weigh", input, "-o", join(folder.path, "out.csv"), "--progress"]);
    expect(run.stderr).toMatch(/[\d,]+ rows, \d+ %/);
    expect(run.stderr).toContain("200,000 rows: 200,000 served");
  });
});

describe("steelyard weigh refuses", () => {
  it.each([
    [
      1,
      "id,arm_mm\n1,190\n",
      "No column holds a length or an age: lying_length_cm, standing_height_cm or age_months is required. The header reads: id, arm_mm.",
    ],
    [1, "lying_length_cm,arm_mm,Arm_mm\n", "Column arm_mm stands in the header twice"],
    [1, "lying_length_cm,total_kg\n", "Column total_kg is already there"],
    [1, "", "it is empty"],
    [1, "\n\n\n", "blank lines only"],
    [1, "PK\u0003\u0004...", "spreadsheet workbook"],
    [1, Buffer.from("\ufefflying_length_cm\n", "utf16le"), "UTF-16"],
    [1, "lying_length_cm\n\u0000\u0001", "it is not a text file"],
    [
      1,
      'lying_length_cm,arm_mm\n136,190\n136,"190\n136,190\n',
      "A quotation mark is opened and never closed",
    ],
  ] as const)("%d: %j", async (status, input, sentence) => {
    const folder = temporaryFolder();
    const run = await callSteelyard([
      "weigh",
      folder.write("in.csv", input as string),
      "-o",
      join(folder.path, "out.csv"),
    ]);
    expect(run.stderr).toContain(sentence);
    expect(run.status).toBe(status);
    expect(folder.names(), "no half-written result").toEqual(["in.csv"]);
  });

  it("a path that cannot be read or written", async () => {
    const folder = temporaryFolder();
    const input = folder.write("in.csv", "lying_length_cm\n136\n");
    const absent = await callSteelyard(["weigh", join(folder.path, "absent.csv")]);
    expect([absent.status, absent.stderr]).toEqual([
      1,
      expect.stringContaining("there is no such file or folder"),
    ]);
    const isFolder = await callSteelyard(["weigh", folder.path]);
    expect([isFolder.status, isFolder.stderr]).toEqual([1, expect.stringContaining("it is a folder")]);
    const toFolder = await callSteelyard(["weigh", input, "-o", folder.path]);
    expect([toFolder.status, toFolder.stderr]).toEqual([1, expect.stringContaining("it is a folder")]);
    const toNowhere = await callSteelyard(["weigh", input, "-o", join(folder.path, "no", "out.csv")]);
    expect([toNowhere.status, toNowhere.stderr]).toEqual([
      1,
      expect.stringContaining("there is no such file or folder"),
    ]);
    expect((await callSteelyard(["weigh"])).status).toBe(2);
  });

  it("an output that is the input, by any name", async () => {
    const folder = temporaryFolder();
    const text = "lying_length_cm\n136\n";
    const input = folder.write("in.csv", text);
    symlinkSync(input, join(folder.path, "symlink.csv"));
    linkSync(input, join(folder.path, "hardlink.csv"));
    for (const name of [
      "in.csv",
      "symlink.csv",
      "hardlink.csv",
      `../${folder.path.split("/").at(-1)}/in.csv`,
    ]) {
      const run = await callSteelyard(["weigh", "in.csv", "-o", name], { cwd: folder.path });
      expect([run.status, run.stderr], name).toEqual([2, expect.stringContaining("are the same file")]);
    }
    expect(folder.read("in.csv")).toBe(text);
  });

  it("to leave half a result when the disk fails midway, and keeps the result that was there", () => {
    const folder = temporaryFolder();
    folder.write("in.csv", `lying_length_cm,arm_mm\n${"136,190\n".repeat(20_000)}`);
    folder.write("out.csv", "the result of last week\n");
    // A limit on the size of files stands for a full disk: 64 blocks of 1 kB.
    const script = `ulimit -f 64; trap '' XFSZ; exec "$0" "$@"`;
    const { status, stderr } = spawnSync(
      "bash",
      ["-c", script, process.execPath, BIN, "weigh", "in.csv", "-o", "out.csv"],
      { cwd: folder.path, encoding: "utf8" },
    );
    expect(stderr).toContain("Cannot write out.csv: the file would be larger than allowed.");
    expect(status).toBe(1);
    expect(folder.read("out.csv")).toBe("the result of last week\n");
    expect(folder.names()).toEqual(["in.csv", "out.csv"]);
  });

  it("nothing when the reader of its output has seen enough", () => {
    const folder = temporaryFolder();
    folder.write("in.csv", `lying_length_cm,arm_mm\n${"136,190\n".repeat(50_000)}`);
    const script = `set -o pipefail; "$0" "$@" | head -1`;
    const { status, stdout, stderr } = spawnSync(
      "bash",
      ["-c", script, process.execPath, BIN, "weigh", "in.csv"],
      {
        cwd: folder.path,
        encoding: "utf8",
      },
    );
    expect(stdout).toContain("notes");
    expect(stderr).not.toContain("Error");
    expect(status).toBe(0);
  });
});
