import { createHash, randomUUID } from "node:crypto";
import { estimateWeight, readSiteProfile } from "@steelyard/core/body";
import { centimetres } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import { verifySignOff, writeFormulary } from "@steelyard/formulary/ownership";
import type { CaseEvent } from "@steelyard/records/case";
import { openLink, sealLink } from "@steelyard/records/department";
import { importStudy, openStudyFile } from "@steelyard/study/import";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { findPostgres } from "../../../scripts/find-postgres.ts";
import { startTemporaryPostgres, type TemporaryPostgres } from "../../../scripts/temporary-postgres.ts";
import { type Department, goodPassword, startDepartment, type Visitor } from "./support/department.ts";

const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");
const planted = "PLANTED";
const versions = {
  software: `0.1.0 ${planted}`,
  model: `2 ${planted}`,
  formulary: `${planted} ward`,
  formularySigned: true,
  calibration: `${planted} ward, 2026-11-01`,
};

const engines = findPostgres() === undefined ? ["sqlite"] : ["sqlite", "postgres"];
if (engines.length === 1) process.stderr.write("SKIPPED on PostgreSQL: none is installed here.\n");
let postgres: TemporaryPostgres | undefined;
let databases = 0;
beforeAll(async () => {
  if (engines.length > 1) postgres = await startTemporaryPostgres({ durable: false });
}, 60_000);
afterAll(() => postgres?.stop());

let engine = "sqlite";
let department: Department;
const begin = async (env: Readonly<Record<string, string>> = {}): Promise<void> => {
  const url = engine === "sqlite" ? undefined : postgres?.createDatabase(`casebook${++databases}`);
  const database =
    url === undefined
      ? ({ type: "sqlite", file: ":memory:" } as const)
      : ({ type: "postgres", url } as const);
  department = await startDepartment({ database, env });
};
afterEach(() => department.close());

/** An invented child who was measured, estimated and, with `kg`, weighed the day after; words planted wherever words may stand. */
function invented(
  n: number,
  { kg, days = 1 }: { readonly kg?: number; readonly days?: number } = {},
): CaseEvent[] {
  const lengthCm = 70 + (n % 60);
  const estimate = estimateWeight({ lengthCm: centimetres(lengthCm) });
  if (!estimate.ok) throw new RangeError("The model serves these lengths");
  const { totalKg, low95Kg, high95Kg } = estimate.value;
  const minute = String(n % 60).padStart(2, "0");
  const head = {
    format: 1,
    caseId: randomUUID(),
    at: `2026-11-${String(1 + (n % 20)).padStart(2, "0")}T03:${minute}:00.000Z`,
    by: planted,
    versions,
  } as const;
  const on = `2026-11-${String(1 + (n % 20) + days).padStart(2, "0")}`;
  return [
    { ...head, id: randomUUID(), type: "case-started", code: `P1A-${String(100 + n)}` },
    {
      ...head,
      id: randomUUID(),
      type: "measurement",
      measurements: { lengthCm, ageMonths: 30.37, sex: "f" },
    },
    {
      ...head,
      id: randomUUID(),
      type: "estimate",
      estimate: { totalKg, low95Kg, high95Kg, rests: ["lengthCm", planted] },
    },
    { ...head, id: randomUUID(), type: "note", text: `${planted} note` },
    ...(kg === undefined
      ? []
      : [{ ...head, id: randomUUID(), type: "later-weight", kg: totalKg * kg, on } as const]),
  ] as CaseEvent[];
}

const keep = (events: readonly CaseEvent[]) =>
  department.store.appendEvents({ site: "main", device: planted, actor: "device:x", events });
const actions = async (): Promise<readonly string[]> =>
  (await department.store.readAudit({ site: "main", limit: 100 })).map(({ action }) => action);

describe.each(engines)("on %s", (name) => {
  beforeEach(() => {
    engine = name;
    return begin();
  });

  describe("the casebook of the department", () => {
    it("lists, opens and takes a later weight, and each of it stands in the log with who did it", async () => {
      const clinician = await department.person("clinician");
      const events = invented(1);
      await keep(events);
      const list = (await clinician.get("/api/cases?due=weight")).json();
      expect(list.cases).toMatchObject([{ code: "P1A-101", doses: 0 }]);
      const { caseId } = events[0] as CaseEvent;
      expect((await clinician.get(`/api/case?caseId=${caseId}`)).json().events).toHaveLength(4);
      const event = {
        format: 1,
        id: randomUUID(),
        caseId,
        at: "2026-11-25T04:00:00.000Z",
        versions: { software: "0.1.0", model: "2", formulary: "f", formularySigned: false },
        type: "later-weight",
        kg: 9.4,
        on: "2026-11-03",
      };
      expect((await clinician.post("/api/case/event", { event })).json()).toEqual({ cursor: 5 });
      expect((await clinician.post("/api/case/event", { event })).json()).toEqual({ cursor: 5 });
      expect((await clinician.get("/api/cases?due=weight")).json().cases).toEqual([]);
      const log = await department.store.readAudit({ site: "main", limit: 10 });
      const own = log.filter(({ actor }) => actor === `person:${clinician.id}`).map(({ action }) => action);
      expect(own.slice(0, 4)).toEqual(["cases.list", "cases.append", "case.read", "cases.list"]);
      for (const [wrong, status, problem] of [
        [{ ...event, type: "note", kg: undefined, on: undefined, text: "x" }, 409, "id-taken"],
        [{ ...event, id: randomUUID(), caseId: randomUUID() }, 404, "unknown-case"],
        [{ ...event, id: randomUUID(), kg: 9000 }, 422, "faulty-event"],
        [events[1], 422, "not-from-the-department"],
      ] as const) {
        const reply = await clinician.post("/api/case/event", { event: wrong });
        expect([reply.statusCode, reply.json().problem]).toEqual([status, problem]);
      }
      expect((await clinician.get(`/api/case?caseId=${randomUUID()}`)).statusCode).toBe(404);
      for (const query of ["limit=101", "from=2026-13-01", "before=x", "state=x", "site=ward"]) {
        expect((await clinician.get(`/api/cases?${query}`)).statusCode, query).toBe(400);
      }
      expect((await department.store.verifyAudit()).faults).toEqual([]);
    });

    it("strikes its own notes and weights only, never what was measured or given", async () => {
      const clinician = await department.person("clinician");
      const started = invented(1, { kg: 1 });
      const [head, measurement, , note, weight] = started as [
        CaseEvent,
        CaseEvent,
        CaseEvent,
        CaseEvent,
        CaseEvent,
      ];
      const { caseId, at } = head;
      const versions = { software: "0.1.0", model: "2", formulary: "f", formularySigned: false };
      const made = (body: object) =>
        ({ format: 1, id: randomUUID(), caseId, at, versions, ...body }) as unknown as CaseEvent;
      const dose = made({
        type: "dose-given",
        given: {
          lineId: "adrenaline.arrest",
          medicine: "adrenaline",
          use: "arrest",
          route: "IV",
          dose: { amount: 0.1, unit: "mg" },
        },
      });
      const undoneDose = made({ type: "undo", target: dose.id });
      const mark = made({ type: "note", text: "at the bedside", replaces: dose.id });
      await keep([...started, dose, undoneDose, mark]);
      const before = (await clinician.get(`/api/case?caseId=${caseId}`)).json().events;
      expect(before).toHaveLength(8);
      const weighed = { type: "later-weight", kg: 9.4, on: "2026-11-03" };
      for (const body of [
        { type: "undo", target: dose.id },
        { type: "undo", target: measurement.id },
        { type: "undo", target: head.id },
        { type: "undo", target: undoneDose.id },
        { type: "undo", target: mark.id },
        { type: "undo", target: randomUUID() },
        { type: "undo", target: note.id, replaces: dose.id },
        { type: "undo", target: note.id, replaces: note.id },
        { type: "note", text: "x", replaces: dose.id },
        { type: "note", text: "x", replaces: weight.id },
        { type: "note", text: "x", replaces: randomUUID() },
        { type: "closed", replaces: dose.id },
        { ...weighed, replaces: measurement.id },
      ]) {
        const reply = await clinician.post("/api/case/event", { event: made(body) });
        expect([reply.statusCode, reply.json().problem], JSON.stringify(body)).toEqual([
          422,
          "not-from-the-department",
        ]);
      }
      expect((await clinician.get(`/api/case?caseId=${caseId}`)).json().events).toEqual(before);
      const undo = made({ type: "undo", target: note.id });
      for (const event of [
        undo,
        made({ type: "undo", target: undo.id }),
        made({ type: "note", text: "x", replaces: note.id }),
        made({ ...weighed, replaces: weight.id }),
        made({ type: "closed" }),
      ]) {
        expect((await clinician.post("/api/case/event", { event })).statusCode, event.type).toBe(200);
      }
    });

    it("shows nothing of another site", async () => {
      await department.store.addSite("ward");
      const events = invented(1, { kg: 1 });
      await department.store.appendEvents({ site: "ward", device: "d", actor: "device:d", events });
      const everybody = await department.person("clinician", "researcher", "reviewer");
      expect((await everybody.get("/api/cases")).json().cases).toEqual([]);
      expect((await everybody.get(`/api/case?caseId=${events[0]?.caseId}`)).statusCode).toBe(404);
      expect((await everybody.get("/api/accuracy")).json().points).toEqual([]);
      expect((await everybody.get("/api/export")).json().rows).toBe(0);
    });

    it("gives errors in the order of time, and to a researcher without anything that leads to a case", async () => {
      await keep(invented(2, { kg: 1 / 1.1 }));
      await keep(invented(1, { kg: 1, days: 3 }));
      await keep(invented(3));
      const clinician = await department.person("clinician");
      const { points, more } = (await clinician.get("/api/accuracy?from=2026-11-01&to=2026-11-30")).json();
      expect(more).toBe(false);
      expect(points.map(({ code }: { code: string }) => code)).toEqual(["P1A-101", "P1A-102"]);
      expect(points[0]).toMatchObject({ daysAfter: 3 });
      expect(points[0].errorPercent).toBeCloseTo(0, 9);
      expect(points[1].errorPercent).toBeCloseTo(10, 9);
      const researcher = await department.person("researcher");
      const without = (await researcher.get("/api/accuracy")).json().points;
      expect(without.map((point: object) => Object.keys(point).sort())).toEqual(
        Array.from({ length: 2 }, () => ["daysAfter", "errorPercent", "estimateKg", "measuredKg"]),
      );
    });

    it("dates no row of a researcher to less than a year, by range or by order", async () => {
      for (let n = 0; n < 8; n++) await keep(invented(n, { kg: 1 / (1 + n / 100) }));
      const researcher = await department.person("researcher");
      for (const path of ["/api/accuracy", "/api/export"]) {
        for (const query of [
          "from=2026-11-03&to=2026-11-03",
          "from=2026-11-03",
          "to=2026-11-03",
          "from=2026-01-01&to=2026-11-03",
          "from=2026-01-02&to=2026-12-31",
          "from=2026-12-31&to=2026-12-31",
        ]) {
          const reply = await researcher.get(`${path}?${query}`);
          expect([reply.statusCode, reply.json().problem], query).toEqual([422, "whole-years-only"]);
        }
        const year = (await researcher.get(`${path}?from=2026-01-01&to=2026-12-31`)).json();
        expect(year.points?.length ?? year.rows).toBe(8);
      }
      const orders = new Set<string>();
      for (let i = 0; i < 6; i++) {
        const { points } = (await researcher.get("/api/accuracy")).json();
        orders.add(points.map(({ errorPercent }: { errorPercent: number }) => errorPercent).join());
      }
      expect(orders.size).toBeGreaterThan(1);
      const both = await department.person("researcher", "clinician");
      expect((await both.get("/api/accuracy?from=2026-11-03&to=2026-11-03")).statusCode).toBe(200);
      expect((await both.get("/api/export?from=2026-11-03&to=2026-11-03")).statusCode).toBe(422);
    });

    it("is exported without names: nothing planted, no code, no day, in an order by chance, and a warning where few", async () => {
      for (let n = 0; n < 6; n++) await keep(invented(n, { kg: 1 }));
      const researcher = await department.person("researcher");
      const { csv, rows, warnings, filename } = (await researcher.get("/api/export")).json();
      expect(rows).toBe(6);
      expect(warnings).toEqual([{ type: "few-rows", rows: 6, fewest: 11 }]);
      expect(`${csv} ${filename}`).not.toMatch(/PLANTED|P1A|2026-|T03|30\.37|[0-9a-f]{8}-[0-9a-f]{4}/);
      const lines = csv.trim().split("\r\n").slice(1);
      expect(lines.map((line: string) => line.split(",")[0])).toEqual(["1", "2", "3", "4", "5", "6"]);
      expect(csv).toContain("lengthCm");
      const file = await openStudyFile(new TextEncoder().encode(csv));
      const study = file.ok ? importStudy(file.value) : file;
      if (!study.ok) throw new RangeError(JSON.stringify(study.error));
      expect([study.value.flow.read, study.value.flow.included]).toEqual([6, 6]);
      expect(study.value.table.numbers.get("ageMonths")?.[0]).toBe(30);
      const lengths = async () =>
        (await researcher.get("/api/export"))
          .json()
          .csv.split("\r\n")
          .map((line: string) => line.split(",")[1])
          .join();
      const orders = new Set<string>();
      for (let i = 0; i < 6; i++) orders.add(await lengths());
      expect(orders.size).toBeGreaterThan(1);
      expect((await actions()).filter((action) => action === "cases.export")).toHaveLength(7);
    });
  });

  describe("a name beside a case", () => {
    it("is off unless the site asks for it; the server keeps what it cannot read, and a purge removes it", async () => {
      const random = (length: number) => crypto.getRandomValues(new Uint8Array(length));
      const events = invented(1);
      const caseId = events[0]?.caseId ?? "";
      const key = { caseId, passphrase: "larch seven otter" };
      const sealed = await sealLink("Invented Child, 4711", { ...key, random });
      const off = await (await department.person("clinician")).get(`/api/case/link?caseId=${caseId}`);
      expect([off.statusCode, off.json()]).toEqual([404, { problem: "local-link-off" }]);
      await department.close();
      await begin({ STEELYARD_LOCAL_LINK: "true" });
      await keep(events);
      const clinician = await department.person("clinician");
      expect((await clinician.get(`/api/case?caseId=${caseId}`)).json().localLink).toBe(true);
      expect((await clinician.get(`/api/case/link?caseId=${caseId}`)).json()).toEqual({});
      const readable = await clinician.post("/api/case/link", { caseId, sealed: "Invented Child, 4711" });
      expect(readable.json()).toMatchObject({
        problem: "malformed",
        reason: "body sealed: must be sealed on the page",
      });
      expect((await clinician.post("/api/case/link", { caseId: randomUUID(), sealed })).statusCode).toBe(404);
      expect((await clinician.post("/api/case/link", { caseId, sealed })).json()).toEqual({ sealed });
      const kept = (await clinician.get(`/api/case/link?caseId=${caseId}`)).json().sealed;
      expect(await openLink(kept, key)).toEqual({ ok: true, value: "Invented Child, 4711" });
      for (const wrong of [
        { ...key, passphrase: "larch seven otters" },
        { ...key, caseId: randomUUID() },
      ]) {
        expect(await openLink(kept, wrong)).toEqual({ ok: false, error: { type: "cannot-open" } });
      }
      const turned = kept.replace(/(.)(.)$/, "$2$1").replace(/.{4}$/, "AAAA");
      expect((await openLink(turned, key)).ok).toBe(false);
      const all = JSON.stringify(await department.store.db.selectFrom("sealed_link").selectAll().execute());
      expect(all).not.toMatch(/Invented|4711|otter/);
      expect((await actions()).filter((action) => action.startsWith("link."))).toEqual([
        "link.read",
        "link.write",
      ]);
      await department.store.purgeCases({
        site: "main",
        actor: "command",
        untouchedSince: "2027-01-01T00:00:00.000Z",
        reason: "retention of 1 days",
      });
      expect(await department.store.db.selectFrom("sealed_link").selectAll().execute()).toEqual([]);
    });

    it("is another sealed text each time, of a length that tells little", async () => {
      const random = (length: number) => crypto.getRandomValues(new Uint8Array(length));
      const order = { caseId: "c", passphrase: "p", random };
      const [one, two, longer] = [
        await sealLink("A", order),
        await sealLink("A", order),
        await sealLink("A name of more signs than one", order),
      ];
      expect(one).not.toBe(two);
      expect(longer.length).toBe(one.length);
      await expect(sealLink("", order)).rejects.toThrow(RangeError);
    });
  });

  describe("what the department signs", () => {
    const sign = (who: Visitor, sha: string, password = goodPassword) =>
      who.post("/api/documents/sign", {
        sha256: sha,
        password,
        registration: "Pharmacist, invented register 7",
      });

    it("goes from its writer by two reviewers to every device, and back", async () => {
      const writer = await department.person("reviewer");
      const [first, second] = [await department.person("reviewer"), await department.person("reviewer")];
      const medicines = draftFormulary.medicines.filter(({ id }) => id === "morphine");
      const cited = JSON.stringify(medicines);
      const sources = draftFormulary.sources.filter(({ id }) => cited.includes(`"sourceId":"${id}"`));
      const content = writeFormulary({ ...draftFormulary, version: "ours 1", medicines, sources });
      const document = { kind: "formulary", label: "Ours 1", content };
      const faulty = await writer.post("/api/documents", {
        ...document,
        content: content.replace('"IV"', '"IX"'),
      });
      expect(faulty.statusCode).toBe(422);
      expect(faulty.json().problem).toBe("faulty-document");
      expect(faulty.json().faults[0].place).toContain("morphine");
      const { sha256: sha } = (await writer.post("/api/documents", document)).json();
      expect((await sign(writer, sha)).json().problem).toBe("own-work");
      expect((await sign(first, sha, "wrong password here")).json().problem).toBe("wrong-credentials");
      expect((await writer.post("/api/documents/publish", { sha256: sha })).json()).toEqual({
        problem: "needs-signatures",
        reason: "0 of 2 signatures",
      });
      expect((await sign(first, sha)).json().document.needs).toEqual({
        signatures: 2,
        have: 1,
        because: ["morphine"],
      });
      expect((await sign(first, sha)).json().problem).toBe("signed-already");
      await sign(second, sha);
      const published = await writer.post("/api/documents/publish", { sha256: sha });
      expect(published.json().document).toMatchObject({ inForce: true, published: true });
      const { documents, publications } = (await writer.get("/api/documents?kind=formulary")).json();
      expect([documents.length, publications[0].sha256]).toEqual([1, sha]);
      expect((await writer.get(`/api/document?sha256=${sha}`)).json().document.label).toBe("Ours 1");

      const bearer = { authorization: `Bearer ${department.deviceToken}` };
      const pull = (held = "") =>
        department.server.inject({ url: `/api/sync/documents?protocol=1${held}`, headers: bearer });
      const out = (await pull()).json();
      expect(out.calibration).toBeNull();
      expect(sha256(out.formulary.content)).toBe(out.formulary.sha256);
      const verified = await verifySignOff({ formulary: JSON.parse(out.formulary.content), sha256 });
      expect(verified).toMatchObject({
        ok: true,
        value: { second: { role: "Pharmacist, invented register 7" } },
      });
      expect((await pull(`&formulary=${out.formulary.sha256}`)).json()).toEqual({
        protocol: 1,
        calibration: null,
      });
      expect(
        (await department.server.inject({ url: "/api/sync/documents?protocol=2", headers: bearer })).json(),
      ).toEqual({
        problem: "unknown-protocol",
        reason: "this server speaks protocol 1",
      });
      for (const action of ["document.add", "document.sign", "document.publish", "document.handed-out"]) {
        expect(await actions()).toContain(action);
      }
    });

    it("is a calibration made from its own weighed cases, judged on children it was not made from", async () => {
      const reviewer = await department.person("reviewer");
      const few = await reviewer.post("/api/calibration/fit", { name: "Larch ward" });
      expect([few.statusCode, few.json().problem]).toEqual([422, "too-few-children"]);
      for (let n = 0; n < 60; n++) await keep(invented(n, { kg: 1.12 + 0.01 * Math.sin(n) }));
      await keep(invented(61, { kg: 3, days: 9 }));
      const fit = (await reviewer.post("/api/calibration/fit", { name: "Larch ward" })).json();
      expect(fit).toMatchObject({
        rows: 60,
        leftOut: [{ reason: "weighed more than 7 days away", rows: 1 }],
        more: false,
      });
      expect(fit.accuracy.after.within10Percent).toBeGreaterThan(fit.accuracy.before.within10Percent);
      expect((await reviewer.post("/api/calibration/fit", { name: "Larch ward" })).json()).toEqual(fit);
      const profile = readSiteProfile(JSON.parse(fit.content));
      expect(profile.ok && profile.value.population.shift).toBeGreaterThan(0.3);
      expect(fit.content).not.toContain(planted);
      const document = { kind: "calibration", label: fit.label, content: fit.content };
      const { sha256: sha } = (await reviewer.post("/api/documents", document)).json();
      expect((await sign(reviewer, sha)).json().document.needs).toEqual({
        signatures: 1,
        have: 1,
        because: [],
      });
      expect((await reviewer.post("/api/documents/publish", { sha256: sha })).statusCode).toBe(200);
      const out = await department.server.inject({
        url: "/api/sync/documents?protocol=1",
        headers: { authorization: `Bearer ${department.deviceToken}` },
      });
      expect(JSON.parse(out.json().calibration.content).signed).toBe(true);
    });
  });

  describe("the audit log of the department", () => {
    it("is read page by page, by action and by person with names, and verified", async () => {
      const administrator = await department.person("administrator");
      const clinician = await department.person("clinician");
      for (let i = 0; i < 3; i++) await clinician.get("/api/cases");
      const page = (await administrator.get("/api/audit?action=cases.list&limit=2")).json();
      expect(page.entries).toHaveLength(2);
      expect(page.entries[0]).toMatchObject({ actorName: "Visitor 2", detail: { cases: 0 } });
      const rest = (
        await administrator.get(`/api/audit?action=cases.list&limit=2&before=${page.next}`)
      ).json();
      expect([rest.entries.length, rest.next]).toEqual([1, undefined]);
      const own = (await administrator.get(`/api/audit?actor=person:${clinician.id}`)).json().entries;
      expect(new Set(own.map(({ actor }: { actor: string }) => actor))).toEqual(
        new Set([`person:${clinician.id}`]),
      );
      const verified = (await administrator.post("/api/audit/verify", {})).json();
      expect(verified).toMatchObject({ whole: true, faults: [] });
      expect(verified.hash).toMatch(/^[0-9a-f]{64}$/);
      const { db } = department.store;
      const unguarded =
        engine === "sqlite"
          ? "DROP TRIGGER audit_entry_no_update"
          : "ALTER TABLE audit_entry DISABLE TRIGGER USER";
      await db.executeQuery({ sql: unguarded, parameters: [] } as never);
      await db.updateTable("audit_entry").set({ actor: "x" }).where("position", "=", 2).execute();
      expect((await administrator.post("/api/audit/verify", {})).json()).toMatchObject({
        whole: false,
        faults: [{ type: "changed-entry", position: 2 }],
      });
    });
  });
});
