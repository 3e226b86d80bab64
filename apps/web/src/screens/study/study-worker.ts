import { calibrateSite, defaultBodyModel, writeSiteProfile } from "@steelyard/core/body";
import { describeCalibrationIssue } from "@steelyard/core/wording";
import type { Typefaces } from "@steelyard/paper";
import { fingerprintText, weighedChildren } from "@steelyard/study/calibration";
import { inventStudy } from "@steelyard/study/example";
import { type OpenedFile, openStudyFile } from "@steelyard/study/import";
import { ENGLISH_REPORT, reportFiles, zipReport } from "@steelyard/study/report";
import { loadPaperTypefaces } from "../../effects/paper-typefaces.ts";
import { sha256 } from "../../effects/sha256.ts";
import { drawPicture } from "./draw-picture.ts";
import { type JudgedStudy, judgeStudy } from "./judge-study.ts";
import { COMPARED_USUALLY, type StudyAnswer, type StudyRequest } from "./study-job.ts";

/** The other side of this worker, as the platform types it. */
const page = self as unknown as {
  onmessage: ((event: MessageEvent<StudyRequest>) => void) | null;
  postMessage(answer: StudyAnswer, transfer?: Transferable[]): void;
};

interface Open {
  readonly file: OpenedFile;
  readonly title: string;
  readonly fileSha256: string;
  readonly madeOn: string;
  readonly software: string;
  readonly typefaces: Typefaces;
}

let open: Open | undefined;
let judged: JudgedStudy | undefined;
let lastTold = 0;

page.onmessage = ({ data }) => {
  void answer(data).catch((error: unknown) =>
    page.postMessage({ type: "failed", sentence: error instanceof Error ? error.message : String(error) }),
  );
};

async function answer(request: StudyRequest): Promise<void> {
  switch (request.type) {
    case "open":
      return openFile(request);
    case "judge":
      return judge(request);
    case "files":
      return makeFiles();
    case "figure":
      return drawFigure(request.name);
    case "calibration":
      return calibrate(request.site);
  }
}

async function openFile({ file, today, software }: Extract<StudyRequest, { type: "open" }>): Promise<void> {
  const bytes =
    file === "example" ? new TextEncoder().encode(inventStudy()) : new Uint8Array(await file.arrayBuffer());
  const [opened, typefaces, hash] = await Promise.all([
    openStudyFile(bytes),
    loadPaperTypefaces(),
    crypto.subtle.digest("SHA-256", bytes),
  ]);
  if (!opened.ok) {
    page.postMessage({ type: "failed", sentence: ENGLISH_REPORT.issue(opened.error) });
    return;
  }
  const fileSha256 = Array.from(new Uint8Array(hash), (byte) => byte.toString(16).padStart(2, "0")).join("");
  open = {
    file: opened.value,
    title: ENGLISH_REPORT.reportTitle(file === "example" ? file : file.name),
    fileSha256,
    madeOn: today,
    software,
    typefaces,
  };
  await judge({ type: "judge", changes: [], methods: [], by: [], compared: COMPARED_USUALLY });
}

async function judge({
  changes,
  methods,
  by,
  compared,
  formulary: own,
}: Extract<StudyRequest, { type: "judge" }>): Promise<void> {
  if (open === undefined) return;
  // The medicines are fetched when a study asks for them, and stay on the device like the rest of the page.
  const formulary = compared.doses
    ? (own ?? (await import("@steelyard/formulary")).draftFormulary)
    : undefined;
  const { file, title, ...facts } = open;
  const result = judgeStudy(file, {
    title,
    changes,
    methods,
    by,
    compared,
    formulary,
    facts: { ...facts, model: defaultBodyModel().version },
    onStep: (step, share) => {
      const now = performance.now();
      if (share > 0 && now - lastTold < 100) return;
      lastTold = now;
      page.postMessage({ type: "progress", step, share });
    },
  });
  if ("refused" in result) {
    page.postMessage({
      type: "failed",
      sentence: result.refused,
      mapping: file.header.map((column) => ({ column, role: { type: "left" }, by: "looks", unitBy: "none" })),
    });
    return;
  }
  judged = result;
  page.postMessage({ type: "judged", study: result.shown });
}

async function makeFiles(): Promise<void> {
  if (judged === undefined || open === undefined) return;
  const { report } = judged;
  const { typefaces } = open;
  const pictures = report.blocks.flatMap((block) =>
    block.type === "figure"
      ? [drawPicture(block.page, typefaces).then((content) => ({ name: `${block.name}.png`, content }))]
      : [],
  );
  const bytes = zipReport([...(await reportFiles(report, typefaces)), ...(await Promise.all(pictures))]);
  page.postMessage({ type: "file", name: "study-report.zip", bytes, mime: "application/zip" }, [
    bytes.buffer,
  ]);
}

async function drawFigure(name: string): Promise<void> {
  const block = judged?.report.blocks.find((own) => own.type === "figure" && own.name === name);
  if (block?.type !== "figure" || open === undefined) return;
  const bytes = await drawPicture(block.page, open.typefaces);
  page.postMessage({ type: "file", name: `${name}.png`, bytes, mime: "image/png" }, [bytes.buffer]);
}

async function calibrate(site: string): Promise<void> {
  if (judged === undefined || open === undefined) return;
  const children = weighedChildren(judged.compared);
  const calibration = calibrateSite(children);
  if (!calibration.ok) {
    page.postMessage({ type: "no-calibration", sentence: describeCalibrationIssue(calibration.error) });
    return;
  }
  const rowsSha256 = await sha256(fingerprintText(children));
  const identity = { name: site, createdOn: open.madeOn, rowsSha256, signed: false };
  const profile = writeSiteProfile(calibration.value, { identity, leftOut: [], software: open.software });
  const bytes = new TextEncoder().encode(`${JSON.stringify(profile, undefined, 2)}\n`);
  page.postMessage({ type: "file", name: "site.json", bytes, mime: "application/json" }, [bytes.buffer]);
}
