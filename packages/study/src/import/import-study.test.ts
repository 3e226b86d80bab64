import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { type ImportIssue, type ImportOptions, importStudy, openStudyFile } from "./index.ts";

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const utf16le = (text: string): Uint8Array =>
  Uint8Array.from([0xff, 0xfe, ...[...text].flatMap((c) => [c.charCodeAt(0) & 255, c.charCodeAt(0) >> 8])]);
const latin1 = (text: string): Uint8Array => Uint8Array.from(text, (c) => c.charCodeAt(0));

async function read(bytes: Uint8Array, options: ImportOptions = {}) {
  const file = await openStudyFile(bytes);
  if (!file.ok) throw new Error(JSON.stringify(file.error));
  const study = importStudy(file.value, options);
  if (!study.ok) throw new Error(JSON.stringify(study.error));
  return study.value;
}

async function issueOf(bytes: Uint8Array): Promise<ImportIssue["type"] | "none"> {
  const file = await openStudyFile(bytes);
  if (!file.ok) return file.error.type;
  const study = importStudy(file.value);
  return study.ok ? "none" : study.error.type;
}

const column = (study: Awaited<ReturnType<typeof read>>, name: string): number[] =>
  Array.from(study.table.numbers.get(name) ?? []);

describe("importStudy()", () => {
  it("reads the same children from every way of writing them", async () => {
    const points =
      "Sexe,Taille (cm),PB mm,Poids kg,Hôpital\nF,95.5,161,13.9,Érable\nM,104.1,150,15.2,Érable\n";
    const commas = points.replaceAll(",", ";").replaceAll(".", ",");
    const files = [
      utf8(points),
      utf8(`\ufeff${commas}`),
      latin1(commas),
      utf16le(commas.replaceAll(";", "\t")),
      utf8(commas.replaceAll("\n", "\r\n")),
    ];
    for (const bytes of files) {
      const study = await read(bytes);
      expect(column(study, "weightKg")).toEqual([13.9, 15.2]);
      expect(column(study, "armMm")).toEqual([161, 150]);
      expect(study.table.words.get("Hôpital")?.levels).toEqual(["Érable"]);
      expect(study.flow).toEqual({ read: 2, blankLines: 0, included: 2, leftOut: [] });
    }
  });

  it("counts one fate for every row and loses none", async () => {
    const text = [
      "height_cm,age_months,muac_mm,weight_kg,oedema",
      "95,36,150,14,n",
      "95,36,150,,n",
      "95,36,150,heavy,n",
      "95,36,150,1400,n",
      ",,150,14,n",
      "95,36,150,14,y",
      "95,36,150,14,n,surplus",
      "",
      "95,36",
    ].join("\n");
    const { flow, cellProblems } = await read(utf8(text));
    expect(flow.read).toBe(8);
    expect(flow.blankLines).toBe(1);
    expect(flow.included + flow.leftOut.reduce((sum, { rows }) => sum + rows, 0)).toBe(flow.read);
    expect(Object.fromEntries(flow.leftOut.map(({ fate, first }) => [fate, first]))).toEqual({
      "row-too-long": [7],
      "weight-missing": [2, 8],
      "weight-unreadable": [3],
      "weight-impossible": [4],
      "length-and-age-missing": [5],
      oedema: [6],
    });
    expect(cellProblems.map(({ type, column }) => `${type} ${column}`).sort()).toEqual([
      "out-of-limits weight_kg",
      "short-row ",
      "unreadable weight_kg",
    ]);
  });

  it("takes units from names, else from numbers, and says how", async () => {
    const rows = Array.from(
      { length: 40 },
      (_, i) => `${(30 + i / 4).toFixed(2)},${(5.5 + i / 20).toFixed(2)},${(25 + i).toFixed(1)}`,
    );
    const study = await read(utf8(`height,arm,weight lb\n${rows.join("\n")}`));
    const units = Object.fromEntries(
      study.mapping.map(({ column, unit, unitBy }) => [column, `${unit} ${unitBy}`]),
    );
    expect(units).toEqual({ height: "in looks", arm: "in looks", "weight lb": "lb name" });
    expect(column(study, "weightKg")[0]).toBeCloseTo(25 * 0.45359237, 9);
    expect(column(study, "armMm")[0]).toBeCloseTo(139.7, 6);
  });

  it("says that units are mixed, and converts when a person says so", async () => {
    const rows = Array.from(
      { length: 60 },
      (_, i) => `${80 + i / 2},${i % 10 === 0 ? 15.5 : 150 + i},${11 + i / 5}`,
    );
    const bytes = utf8(`length_cm,muac_mm,weight_kg\n${rows.join("\n")}`);
    const asIs = await read(bytes);
    expect(asIs.mapping[1]?.doubt).toEqual({ type: "mixed-units", other: "cm", share: 0.1 });
    expect(asIs.cellProblems).toMatchObject([{ column: "muac_mm", type: "out-of-limits", cells: 6 }]);
    const changed = await read(bytes, {
      changes: [{ column: "muac_mm", role: { type: "field", field: "armMm" }, unit: "mm", alsoUnit: "cm" }],
    });
    expect(column(changed, "armMm")[0]).toBe(155);
    expect(changed.cellProblems).toMatchObject([{ type: "converted", cells: 6 }]);
  });

  it("makes a lying length of a stature by stance, else by age, else by size", async () => {
    const text =
      "height_cm,position,age_months,weight_kg\n90,lying,30,12\n90,standing,30,12\n80,,12,10\n80,,30,10\n86.9,,,12\n87,,,12\n";
    expect(column(await read(utf8(text)), "lengthCm")).toEqual([90, 90.7, 80, 80.7, 86.9, 87.7]);
  });

  it("keeps columns of estimates and groups, and a line for every column", async () => {
    const { mapping, table } = await read(
      utf8("id,length_cm,weight_kg,formula kg,ward,note\n1,90,12,11,A,x y\n2,91,13,12,B,\n"),
    );
    expect(mapping.map(({ column, role }) => `${column}: ${role.type}`)).toEqual([
      "id: field",
      "length_cm: field",
      "weight_kg: field",
      "formula kg: estimate",
      "ward: field",
      "note: group",
    ]);
    expect(Array.from(table.numbers.get("formula kg") ?? [])).toEqual([11, 12]);
  });

  it("takes no end of a range for an estimate", async () => {
    const { mapping } = await read(
      utf8("length_cm,weight_kg,total_kg,low95_kg,high95_kg\n90,12,11,10.1,13\n91,13,12,10.9,14\n"),
    );
    const estimates = mapping.filter(({ role }) => role.type === "estimate");
    expect(estimates.map(({ column }) => column)).toEqual(["total_kg"]);
  });

  it("reads quoted cells over lines, numbers with their own unit, and spaces", async () => {
    const study = await read(
      utf8('length_cm,weight_kg,note\n"95 ",14.0,"two\nlines, one cell"\n1.02 m,15 kg,\n'),
    );
    expect(column(study, "lengthCm")).toEqual([95, 102]);
    expect(study.cellProblems.map(({ type, cells }) => [type, cells])).toEqual([
      ["unit-in-cell", 1],
      ["unit-in-cell", 1],
    ]);
  });
});

describe("bad files", () => {
  it.each([
    ["empty", new Uint8Array(), "empty-file"],
    ["header only", utf8("length_cm,weight_kg\n"), "header-only"],
    ["wrong delimiter", utf8("length_cm^weight_kg\n90^12\n"), "one-column"],
    ["no header", utf8("90,12\n91,13\n"), "header-missing"],
    ["no weight", utf8("length_cm,arm_mm\n90,150\n"), "column-missing"],
    ["binary", Uint8Array.from({ length: 300 }, (_, i) => (i * 37) % 251), "not-a-table"],
    [
      "a quotation mark that is never closed",
      utf8('length_cm,weight_kg\n90,"12\n91,13\n'),
      "quote-not-closed",
    ],
    [
      "a workbook cut in two",
      zipSync({ "xl/workbook.xml": strToU8("<workbook/>") }).slice(0, 60),
      "workbook-damaged",
    ],
    ["a zip of something else", zipSync({ "a.txt": strToU8("a") }), "not-a-table"],
    [
      "a million columns",
      utf8(`${Array.from({ length: 1e6 }, (_, i) => `c${i}`).join(",")}\n1,2\n`),
      "too-many-columns",
    ],
    [
      "a SAS file cut off",
      utf8(`HEADER RECORD*******LIBRARY HEADER RECORD!!!!!!!${"0".repeat(31)}`),
      "transport-damaged",
    ],
  ] as const)("says what is wrong: %s", async (_name, bytes, type) => {
    expect(await issueOf(bytes as Uint8Array)).toBe(type);
  });

  it("takes names of columns as names, whatever they mean to the language", async () => {
    const header = "__proto__,constructor,toString,lying_length_cm,weight_kg";
    const study = await read(utf8(`${header}\npolluted,x,y,90.5,12\npolluted,x,y,91,13.4\n`));
    expect(column(study, "weightKg")).toEqual([12, 13.4]);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
    expect(Object.prototype).not.toHaveProperty("polluted");
  });

  it("inflates no workbook that was made to exhaust the memory", async () => {
    const bomb = zipSync({ "xl/worksheets/sheet1.xml": new Uint8Array(12e6) }, { level: 6 });
    expect(bomb.length).toBeLessThan(100_000);
    expect(await issueOf(bomb)).toBe("workbook-too-large");
  });
});

describe("a workbook", () => {
  const sheet = `<?xml version="1.0"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>
<row r="1"><c r="A1" t="inlineStr"><is><t>length_cm</t></is></c><c r="B1" t="inlineStr"><is><t>weight_kg</t></is></c></row>
<row r="2"><c r="A2"><v>90.5</v></c><c r="B2"><f>6*2</f><v>12</v></c></row>
<row r="3"><c r="A3"><v>91</v></c><c r="B3"><v>13.4</v></c></row></sheetData></worksheet>`;
  const workbook = zipSync({
    "[Content_Types].xml": strToU8(
      '<?xml version="1.0"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>',
    ),
    "xl/workbook.xml": strToU8(
      '<?xml version="1.0"?><workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="Children" sheetId="1" r:id="rId1"/></sheets></workbook>',
    ),
    "xl/_rels/workbook.xml.rels": strToU8(
      '<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/></Relationships>',
    ),
    "xl/worksheets/sheet1.xml": strToU8(sheet),
  });

  it("is read with the last value of its formulas, and says which cells they are", async () => {
    const study = await read(workbook);
    expect(column(study, "weightKg")).toEqual([12, 13.4]);
    expect(study.facts).toMatchObject({
      type: "workbook",
      sheet: "Children",
      formulaCells: { count: 1, first: ["B2"] },
    });
  });

  const withCells = (cells: string, part = "worksheets/sheet1.xml"): Uint8Array => {
    const parts = unzipSync(workbook);
    const rels = strFromU8(parts["xl/_rels/workbook.xml.rels"] as Uint8Array);
    return zipSync({
      ...parts,
      "xl/_rels/workbook.xml.rels": strToU8(rels.replace("worksheets/sheet1.xml", part)),
      [`xl/${part}`]: strToU8(sheet.replace("</sheetData>", `${cells}</sheetData>`)),
    });
  };

  it.each([
    ["at the far corner", '<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>', "sheet-scattered"],
    ["far below", `<row r="90"><c r="A1048576"/><c r="XFD4"/></row>`, "sheet-scattered"],
    ["past the last column", '<row r="9"><c r="XFE9"><v>1</v></c></row>', "workbook-damaged"],
    ["past any column", '<row r="9"><c r="ZZZZZZZ9"><v>1</v></c></row>', "workbook-damaged"],
    ["past any row", '<row r="9"><c r="A999999999"><v>1</v></c></row>', "workbook-damaged"],
    ["in another way of writing numbers", '<row r="9"><c r="A1e9"><v>1</v></c></row>', "workbook-damaged"],
    ["in entities", '<row r="9"><c r="A&#57;99999999"><v>1</v></c></row>', "workbook-damaged"],
    ["behind a quoted end of the tag", `<row r="9"><c t=">" r = 'A999999999'/></row>`, "workbook-damaged"],
    ["twice", '<row r="9"><c s="1" r="A9" r="A999999999"/></row>', "workbook-damaged"],
    ["with a prefix", '<row r="9"><x:c s="1" r="XFD1048576"/></row>', "sheet-scattered"],
  ])("with a cell %s is refused before a table is made of it", async (_name, cells, type) => {
    for (const part of ["worksheets/sheet1.xml", "elsewhere/part.xml"]) {
      expect(await openStudyFile(withCells(cells, part))).toMatchObject({ ok: false, error: { type } });
    }
  });

  it("with gaps as people leave them is read, and entities of its own are not", async () => {
    const cells = '<row r="1000"><c r="A1000"><v>92</v></c><c r="CV1000"><v>1</v></c></row>';
    expect((await openStudyFile(withCells(cells))).ok).toBe(true);
    const laughs = Array.from({ length: 9 }, (_, i) => `<!ENTITY l${i + 1} "${`&l${i};`.repeat(10)}">`);
    const head = `<!DOCTYPE x [<!ENTITY l0 "lol"><!ENTITY file SYSTEM "file:///etc/passwd">${laughs.join("")}]>`;
    const parts = unzipSync(workbook);
    const text = sheet.replace("?>", `?>${head}`).replace("length_cm", "length_cm &l9;&file;");
    const file = await openStudyFile(zipSync({ ...parts, "xl/worksheets/sheet1.xml": strToU8(text) }));
    expect(file.ok && file.value.header[0]).toBe("length_cm &l9;&file;");
  });

  it("names its sheets when another is asked for", async () => {
    const file = await openStudyFile(workbook, { sheet: "Adults" });
    expect(file).toMatchObject({ ok: false, error: { type: "sheet-missing", sheets: ["Children"] } });
  });
});
