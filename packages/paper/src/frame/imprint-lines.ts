import { formatNumber } from "@steelyard/core/units";
import { cautionBlock } from "@steelyard/core/wording";
import { formularyTag } from "./formulary-language.ts";
import type { Imprint } from "./imprint.ts";
import type { SheetContext } from "./sheet-context.ts";

/** What the page says of its origin, one sentence a line. */
export function imprintLines({ imprint, messages }: SheetContext): readonly string[] {
  const { frame } = messages;
  const { calibration, softwareVersion, modelVersion, madeOn, expiresOn } = imprint;
  return [
    frame.madeAndExpires({ madeOn, expiresOn }),
    formularyLine(imprint, frame),
    calibration === undefined
      ? frame.notCalibrated
      : frame.calibrated({
          ...calibration,
          children: formatNumber(calibration.children, messages.language.numbers),
        }),
    frame.versions({ software: softwareVersion, model: modelVersion }),
    frame.fingerprint({ short: shortFingerprint(imprint) }),
  ];
}

function formularyLine({ formulary }: Imprint, frame: SheetContext["messages"]["frame"]): string {
  if (formulary === undefined) return frame.noFormulary;
  const { title, version, signOff } = formulary;
  if (signOff === undefined) return frame.formularyUnsigned({ title, version });
  const { second } = signOff;
  const signed = frame.formularySigned({ title, version, ...signOff });
  return second === undefined ? signed : `${signed}, ${frame.secondSigner(second)}`;
}

/** The first 16 digits in fours: enough to compare by eye. */
function shortFingerprint({ fingerprint }: Pick<Imprint, "fingerprint">): string {
  return (fingerprint.slice(0, 16).match(/.{4}/g) ?? []).join(" ");
}

/** Where there are English words of a formulary on a page in another language: that they are English. */
export function formularyWords({ imprint, messages }: SheetContext): readonly string[] {
  const words = messages.frame.formularyWords;
  const isEnglish = formularyTag({ imprint }).split("-", 1)[0] === "en";
  return imprint.formulary === undefined || words === "" || !isEnglish ? [] : [words];
}

/** What nobody may overlook on a page, in bold where there is room: that it is not signed, that its words are unreviewed. */
export function pageMarks({
  imprint,
  messages,
}: Pick<SheetContext, "imprint" | "messages">): readonly string[] {
  const { unreviewed } = messages.language;
  return [
    ...(imprint.signed ? [] : [messages.frame.draftLong]),
    ...(unreviewed === undefined ? [] : [unreviewed]),
  ];
}

/** The text in the QR code: capitals and figures only, which makes the code coarse and easy to read. */
export function fingerprintCodeText({ fingerprint }: Pick<Imprint, "fingerprint">): string {
  return `STEELYARD ${fingerprint.toUpperCase()}`;
}

/** The safety words in one run, their heading first. */
export function cautionText({ messages }: Pick<SheetContext, "messages">): string {
  const { title, lines } = cautionBlock(messages.language.messages);
  return messages.frame.cautions({ title, text: lines.join(" ") });
}
