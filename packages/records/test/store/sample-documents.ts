import { calibrateSite, estimateWeight, writeSiteProfile } from "@steelyard/core/body";
import { centimetres } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import { writeFormulary } from "@steelyard/formulary/ownership";
import type { Store } from "@steelyard/records/store";
import { uuid } from "../case/sample-events.ts";

/** A sound formulary of these medicines of the draft, with the sources that they cite. */
export function formularyOf(version: string, ...ids: readonly string[]): string {
  const medicines = draftFormulary.medicines.filter(({ id }) => ids.includes(id));
  const text = JSON.stringify(medicines);
  const sources = draftFormulary.sources.filter(({ id }) => text.includes(`"sourceId":"${id}"`));
  return writeFormulary({ ...draftFormulary, version, medicines, sources });
}

/** A sound calibration of invented children, heavier by `factor` than the body model has them. */
export function calibrationOf(factor: number): string {
  const rows = Array.from({ length: 30 }, (_, i) => {
    const measurements = { lengthCm: centimetres(70 + 3 * i) };
    const estimate = estimateWeight(measurements);
    if (!estimate.ok) throw new RangeError("The model serves these lengths");
    return { measurements, weightKg: estimate.value.totalKg * factor };
  });
  const calibration = calibrateSite(rows);
  if (!calibration.ok) throw new RangeError("30 children are enough");
  const identity = {
    name: "Larch ward",
    createdOn: "2026-11-25",
    rowsSha256: "0".repeat(64),
    signed: false,
  };
  return JSON.stringify(writeSiteProfile(calibration.value, { identity, leftOut: [], software: "0.1.0" }));
}

/** Somebody of the site who can act at once; gives the actor. */
export async function addPerson(
  store: Store,
  n: number,
  { roles = "reviewer", site = "resus" }: { readonly roles?: string; readonly site?: string } = {},
): Promise<string> {
  await store.db
    .insertInto("person")
    .values({
      id: uuid(0x9000 + n),
      site,
      name: `Person ${n}`,
      login: `person-${n}-${site}`,
      roles,
      state: "active",
      created_at: "2026-11-25T03:00:00.000Z",
      joined_at: "2026-11-25T03:00:00.000Z",
      last_sign_in_at: null,
    })
    .execute();
  return `person:${uuid(0x9000 + n)}`;
}
