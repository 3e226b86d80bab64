import { type Drawing, renderPdf, renderSvg, type Typefaces } from "@steelyard/paper";
import { loadPaperTypefaces } from "../../effects/paper-typefaces.ts";
import { sha256 } from "../../effects/sha256.ts";
import { loadPaperMessages } from "./load-paper-messages.ts";
import { makePaper } from "./make-paper.ts";
import type { PaperAnswer, PaperRequest, ShownPage } from "./paper-job.ts";

/** The other side of this worker, as the platform types it. */
const screen = self as unknown as {
  onmessage: ((event: MessageEvent<PaperRequest>) => void) | null;
  postMessage(answer: PaperAnswer, transfer?: Transferable[]): void;
};

interface Made {
  /** Of the file: it goes with the drawing, whatever has been chosen since. */
  readonly name: string;
  readonly drawing: Drawing;
  readonly typefaces: Typefaces;
  readonly madeOn: string;
  readonly creator: string;
}

let made: Made | undefined;
/** A file was asked for while another drawing was on its way. */
let isFileDue = false;

screen.onmessage = ({ data }) => {
  void answer(data).catch(() => screen.postMessage({ type: "refused", refusal: { type: "failed" } }));
};

async function answer(request: PaperRequest): Promise<void> {
  switch (request.type) {
    case "draw":
      return draw(request);
    case "page":
      if (made !== undefined) screen.postMessage({ type: "drawn", shown: show(made.drawing, request.page) });
      return;
    case "file":
      return makeFile();
  }
}

async function draw({
  choices,
  measurements,
  today,
  software,
  page,
  name,
}: Extract<PaperRequest, { type: "draw" }>): Promise<void> {
  made = undefined;
  isFileDue = false;
  const loaded = await Promise.all([loadPaperTypefaces(), loadPaperMessages(choices.language)]).catch(
    () => undefined,
  );
  if (loaded === undefined) {
    screen.postMessage({ type: "refused", refusal: { type: "not-loaded" } });
    return;
  }
  const [typefaces, messages] = loaded;
  const onStep = (done: number, of: number): void => screen.postMessage({ type: "progress", done, of });
  const paper = await makePaper(choices, {
    typefaces,
    messages,
    sha256,
    today,
    software,
    measurements,
    onStep,
  });
  if (!paper.ok) {
    screen.postMessage({ type: "refused", refusal: paper.error });
    return;
  }
  made = { name, drawing: paper.value, typefaces, madeOn: today, creator: `steelyard ${software}` };
  screen.postMessage({ type: "drawn", shown: show(paper.value, page) });
  if (isFileDue) await makeFile();
}

function show({ title, pages }: Drawing, wanted: number): ShownPage {
  const page = Math.min(wanted, pages.length - 1);
  const own = pages[page];
  if (own === undefined) throw new RangeError(`Cannot show page ${wanted} as the paper has none`);
  return { page, pages: pages.length, svg: renderSvg(own, { title: `${title}, ${own.label}` }) };
}

async function makeFile(): Promise<void> {
  isFileDue = made === undefined;
  if (made === undefined) return;
  const { name, drawing, ...options } = made;
  const bytes = (await renderPdf(drawing, options)) as Uint8Array<ArrayBuffer>;
  screen.postMessage({ type: "file", name, bytes }, [bytes.buffer]);
}
