import type { Measurements } from "@steelyard/core/body";
import { useEffect, useRef, useState } from "preact/hooks";
import { saveFile } from "../../effects/save-file.ts";
import { watchDay } from "../../effects/watch-day.ts";
import { paperMessages } from "../../messages/paper.ts";
import { versions } from "../../state/versions.ts";
import { fileNameOf, type PaperChoices } from "./paper-choices.ts";
import type { PaperAnswer, PaperRequest, ShownPage } from "./paper-job.ts";
import type { PaperRefusal } from "./paper-refusal.ts";

/** Where a paper stands, as the screen shows it. */
export type PaperState =
  | { readonly state: "drawing"; readonly progress?: { readonly done: number; readonly of: number } }
  | { readonly state: "cancelled" }
  | { readonly state: "refused"; readonly refusal: PaperRefusal }
  | { readonly state: "drawn"; readonly shown: ShownPage };

/** Typing a width is over after this long, ms. */
const pauseMs = 250;

/** Keeps the worker that draws what is chosen; giving up ends it, and so does another choice while it draws. */
export function usePaper(
  choices: PaperChoices,
  measurements: Measurements | undefined,
): {
  readonly made: PaperState;
  /** What was done last, in words. */
  readonly said: string;
  readonly turnTo: (page: number) => void;
  readonly download: () => void;
  readonly cancel: () => void;
  readonly drawAgain: () => void;
} {
  const [made, setMade] = useState<PaperState>({ state: "drawing" });
  const [said, setSaid] = useState("");
  const [tries, setTries] = useState(0);
  const worker = useRef<Worker | undefined>(undefined);
  const isDrawing = useRef(false);
  const page = useRef(0);

  const end = (): void => {
    worker.current?.terminate();
    worker.current = undefined;
    isDrawing.current = false;
  };
  useEffect(() => end, []);

  const take = (answer: PaperAnswer): void => {
    if (answer.type === "progress") {
      setMade({ state: "drawing", progress: answer });
      return;
    }
    isDrawing.current = false;
    if (answer.type === "drawn") {
      page.current = answer.shown.page;
      setMade({ state: "drawn", shown: answer.shown });
    } else if (answer.type === "refused") {
      setSaid("");
      setMade({ state: "refused", refusal: answer.refusal });
    } else {
      saveFile({ name: answer.name, bytes: answer.bytes, type: "application/pdf" });
      setSaid(paperMessages.made(answer.name));
    }
  };

  const ask = (request: PaperRequest): void => {
    if (worker.current === undefined) {
      const own = new Worker(new URL("./paper-worker.ts", import.meta.url), { type: "module" });
      own.onmessage = ({ data }: MessageEvent<PaperAnswer>) => take(data);
      own.onerror = () => {
        end();
        take({ type: "refused", refusal: { type: "failed" } });
      };
      worker.current = own;
    }
    worker.current.postMessage(request);
  };

  useEffect(() => {
    setSaid("");
    const pause = setTimeout(() => {
      if (isDrawing.current) end();
      isDrawing.current = true;
      // A file that was asked for of what was drawn before does not come any more.
      setSaid("");
      // What is drawn within a blink takes the place of what was there; a booklet leaves it empty meanwhile.
      if (choices.kind === "booklet") setMade({ state: "drawing" });
      ask({
        type: "draw",
        choices,
        measurements,
        today: today(),
        software: versions.software,
        page: page.current,
        name: fileNameOf(choices),
      });
    }, pauseMs);
    return () => clearTimeout(pause);
  }, [choices, measurements, tries]);

  return {
    made,
    said,
    turnTo: (wanted) => ask({ type: "page", page: wanted }),
    download: () => {
      setSaid(paperMessages.making);
      ask({ type: "file" });
    },
    cancel: () => {
      end();
      setMade({ state: "cancelled" });
    },
    drawAgain: () => setTries(tries + 1),
  };
}

function today(): string {
  let day = "";
  watchDay((own) => {
    day = own;
  });
  return day;
}
