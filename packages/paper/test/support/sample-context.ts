import { createHash } from "node:crypto";
import { defaultBodyModel, type StoredSiteProfile } from "@steelyard/core/body";
import type { Formulary } from "@steelyard/core/dosing";
import { draftFormulary } from "@steelyard/formulary";
import { signFormulary } from "@steelyard/formulary/ownership";
import { createImprint, ENGLISH_PAPER, type PaperMessages, type SheetContext } from "@steelyard/paper";
import { loadTypefaces } from "./load-typefaces.ts";
import { calibratedSite } from "./sample-site.ts";

export const sha256 = (text: string): string => createHash("sha256").update(text, "utf8").digest("hex");

/** What a paper is drawn with, for one invented day. */
export async function sampleContext({
  site,
  formulary,
  messages = ENGLISH_PAPER,
}: {
  readonly site?: StoredSiteProfile;
  readonly formulary?: Formulary;
  readonly messages?: PaperMessages;
} = {}): Promise<SheetContext> {
  const imprint = await createImprint({
    paper: "sample",
    choices: {},
    softwareVersion: "0.1.0",
    modelVersion: defaultBodyModel().version,
    site,
    formulary,
    madeOn: "2026-11-25",
    expiresOn: "2027-11-25",
    sha256,
  });
  if (!imprint.ok) throw new Error(`Cannot make the sample: ${imprint.error.type}`);
  return { typefaces: loadTypefaces(), messages, imprint: imprint.value };
}

/** Names as long as a large hospital has them; the formulary is signed, and the calibration where it is said to be. */
export async function longContext({
  signed,
  messages = ENGLISH_PAPER,
}: {
  readonly signed: boolean;
  readonly messages?: PaperMessages;
}): Promise<SheetContext> {
  const formulary = await signFormulary({
    formulary: {
      ...draftFormulary,
      title: "Formulary of the Children's Emergency Departments of the North-Western Region",
    },
    name: "Dr Wilhelmina Featherstonehaugh-Przybyszewska",
    role: "consultant paediatric emergency physician",
    date: "2026-11-20",
    second: {
      name: "Maximiliane Freifrau von Hohenstauffen-Oppersdorff",
      role: "lead pharmacist for medicines safety",
      date: "2026-11-21",
    },
    sha256,
  });
  const site = calibratedSite({
    name: "University Children's Hospital of the North-Western Region, Emergency Department",
    signed,
  });
  return sampleContext({ formulary, site, messages });
}

export const rendering = { madeOn: "2026-11-25", creator: "steelyard 0.1.0" };
