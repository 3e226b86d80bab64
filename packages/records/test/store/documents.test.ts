import { createHash } from "node:crypto";
import { readSiteProfile } from "@steelyard/core/body";
import { validateFormulary } from "@steelyard/formulary";
import { signFormulary, verifySignOff, writeFormulary } from "@steelyard/formulary/ownership";
import type { Store } from "@steelyard/records/store";
import { sql } from "kysely";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { findPostgres } from "../../../../scripts/find-postgres.ts";
import { open, useEngines } from "./engines.ts";
import { addPerson, calibrationOf, formularyOf } from "./sample-documents.ts";

const engines = useEngines(findPostgres() !== undefined);
const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");
const site = "resus";
const plain = formularyOf("1", "paracetamol");
const high = formularyOf("2", "paracetamol", "morphine");

describe.each(engines)("what a site signs, on $name", ({ newDatabase }) => {
  let store: Store;
  let people: Readonly<Record<"writer" | "second" | "third" | "clinician", string>>;
  beforeEach(async () => {
    store = await open(newDatabase());
    await store.addSite(site);
    people = {
      writer: await addPerson(store, 1),
      second: await addPerson(store, 2),
      third: await addPerson(store, 3, { roles: "clinician,reviewer" }),
      clinician: await addPerson(store, 4, { roles: "clinician" }),
    };
  });
  afterEach(() => store.close());

  const add = async (content: string, kind: "formulary" | "calibration" = "formulary") => {
    const added = await store.addDocument({ site, actor: people.writer, kind, label: "A label", content });
    if (!added.ok) throw new RangeError(JSON.stringify(added.error));
    return added.value.sha256;
  };
  const sign = (actor: string, name: string) =>
    store.signDocument({ site, actor, sha256: name, registration: "Pharmacist, invented register 1" });
  const publish = (name: string) => store.publishDocument({ site, actor: people.writer, sha256: name });
  const state = async (name: string) => (await store.findDocument({ site, sha256: name }))?.document;
  const fine = { ok: true, value: undefined };

  it("is refused with every fault, and kept once in its one form without a sign-off from elsewhere", async () => {
    const kind = "formulary";
    const refused = await store.addDocument({ site, actor: "a", kind, label: "x", content: '{"id":1}' });
    expect(refused).toMatchObject({ ok: false, error: { type: "faulty-document" } });
    const calibration = { site, actor: "a", kind: "calibration", label: "x", content: "{}" } as const;
    expect((await store.addDocument(calibration)).ok).toBe(false);
    expect((await store.listDocuments({ site, kind })).documents).toEqual([]);
    const elsewhere = await signFormulary({
      formulary: JSON.parse(plain),
      name: "E. Lsewhere",
      role: "pharmacist",
      date: "2026-11-01",
      sha256,
    });
    const name = await add(writeFormulary(elsewhere));
    expect(await add(plain)).toBe(name);
    const kept = (await store.findDocument({ site, sha256: name }))?.content ?? "";
    expect(name).toBe(sha256(kept));
    expect(JSON.parse(kept)).toEqual(JSON.parse(plain));
  });

  it("needs one licensed reviewer without a high-alert medicine, and that may be who wrote it", async () => {
    const name = await add(plain);
    expect(await publish("0".repeat(64))).toEqual({ ok: false, error: { type: "unknown-document" } });
    expect(await publish(name)).toEqual({ ok: false, error: { type: "needs-signatures", have: 0, need: 1 } });
    expect(await sign(people.clinician, name)).toMatchObject({ error: { type: "not-a-reviewer" } });
    expect(await sign("person:nobody", name)).toMatchObject({ error: { type: "not-a-reviewer" } });
    expect(await sign(people.writer, name)).toEqual(fine);
    expect(await sign(people.writer, name)).toMatchObject({ error: { type: "signed-already" } });
    expect(await publish(name)).toEqual(fine);
    expect(await state(name)).toMatchObject({ published: true, inForce: true, needs: { have: 1 } });
  });

  it("needs two who did not write it with a high-alert medicine, whatever the caller says", async () => {
    const name = await add(high);
    expect(await sign(people.writer, name)).toMatchObject({ error: { type: "own-work" } });
    await sign(people.second, name);
    expect(await publish(name)).toMatchObject({ error: { type: "needs-signatures", have: 1, need: 2 } });
    await sign(people.third, name);
    expect(await publish(name)).toEqual(fine);
    expect(await state(name)).toMatchObject({
      needs: { signatures: 2, have: 2, because: ["morphine"] },
      signatures: [
        { person: { name: "Person 2" }, role: "reviewer", counts: true },
        { person: { name: "Person 3" }, registration: "Pharmacist, invented register 1" },
      ],
    });
    // Leaving the medicine out changes it: the plain one, signed by its writer alone, is not enough any more.
    const less = await add(plain);
    expect((await state(less))?.needs).toEqual({ signatures: 2, have: 0, because: ["morphine"] });
    await sign(people.second, less);
    expect(await publish(less)).toMatchObject({ error: { type: "needs-signatures", have: 1, need: 2 } });
  });

  it("counts a signature given when one was enough, but not that of the writer once two are needed", async () => {
    const less = await add(plain);
    await sign(people.writer, less);
    const more = await add(high);
    for (const actor of [people.second, people.third]) await sign(actor, more);
    await publish(more);
    expect(await state(less)).toMatchObject({ needs: { signatures: 2, have: 0 } });
    await sign(people.second, less);
    await sign(people.third, less);
    expect(await publish(less)).toEqual(fine);
    const [last] = (await store.listDocuments({ site, kind: "formulary" })).publications;
    expect(last).toMatchObject({ position: 2, sha256: less });
    // Rolled back: the earlier one comes again under a new place.
    expect(await publish(more)).toEqual(fine);
    expect((await store.listDocuments({ site, kind: "formulary" })).publications).toHaveLength(3);
    expect((await store.verifyAudit()).faults).toEqual([]);
  });

  it("keeps the signature of who is no reviewer any more, and is not put in force by it", async () => {
    const name = await add(high);
    await sign(people.second, name);
    await sign(people.third, name);
    await store.db
      .updateTable("person")
      .set({ roles: "clinician" })
      .where("id", "=", people.third.replace("person:", ""))
      .execute();
    expect(await publish(name)).toMatchObject({ error: { type: "needs-signatures", have: 1, need: 2 } });
    expect((await state(name))?.signatures.map(({ counts }) => counts)).toEqual([true, false]);
    // A signature holds for one content: the same formulary under another version is another document.
    const other = await add(formularyOf("3", "paracetamol", "morphine"));
    expect((await state(other))?.signatures).toEqual([]);
  });

  it("is another site's business at another site", async () => {
    await store.addSite("ward");
    const name = await add(plain);
    const there = { site: "ward", actor: await addPerson(store, 9, { site: "ward" }), sha256: name };
    expect(await store.findDocument({ site: "ward", sha256: name })).toBeUndefined();
    expect(await store.signDocument({ ...there, registration: "x" })).toMatchObject({ ok: false });
    expect(await sign(there.actor, name)).toMatchObject({ error: { type: "not-a-reviewer" } });
  });

  it("is handed out signed, by the signatures it was put in force with, so that a device can check it", async () => {
    expect(await store.handedOut({ site, kind: "formulary" })).toBeUndefined();
    const name = await add(high);
    await sign(people.second, name);
    await sign(people.third, name);
    await publish(name);
    const out = await store.handedOut({ site, kind: "formulary" });
    if (out === undefined || out === "held") throw new RangeError("It is in force");
    expect(sha256(out.content)).toBe(out.sha256);
    const formulary = validateFormulary(JSON.parse(out.content));
    if (!formulary.ok) throw new RangeError("It is sound");
    const verified = await verifySignOff({ formulary: formulary.value, sha256 });
    expect(verified).toMatchObject({
      ok: true,
      value: {
        name: "Person 2",
        role: "Pharmacist, invented register 1",
        date: "2026-11-25",
        second: { name: "Person 3" },
      },
    });
    expect(await store.handedOut({ site, kind: "formulary", held: out.sha256 })).toBe("held");
    expect(await store.handedOut({ site, kind: "formulary", held: name })).toEqual(out);

    const calibration = await add(calibrationOf(1.1), "calibration");
    await sign(people.writer, calibration);
    expect(await publish(calibration)).toEqual(fine);
    const profile = await store.handedOut({ site, kind: "calibration" });
    if (profile === undefined || profile === "held") throw new RangeError("It is in force");
    const read = readSiteProfile(JSON.parse(profile.content));
    expect(read.ok && read.value.identity.signed).toBe(true);
    expect(profile.signatures).toHaveLength(1);
  });

  it("refuses in the engine itself to change what was signed", async () => {
    const name = await add(plain);
    await sign(people.writer, name);
    await publish(name);
    for (const table of ["document", "signature", "publication"]) {
      await expect(sql.raw(`DELETE FROM ${table}`).execute(store.db)).rejects.toThrow("is append-only");
    }
  });
});
