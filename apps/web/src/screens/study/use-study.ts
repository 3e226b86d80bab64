import type { Formulary } from "@steelyard/core/dosing";
import { useEffect, useRef, useState } from "preact/hooks";
import { saveFile } from "../../effects/save-file.ts";
import { watchDay } from "../../effects/watch-day.ts";
import { study as messages } from "../../messages/study.ts";
import { versions } from "../../state/versions.ts";
import type { ShownStudy, StudyAnswer, StudyRequest, StudyStep } from "./study-job.ts";

/** Where a study stands, as the page shows it. */
export interface StudyState {
  readonly working: { readonly step: StudyStep; readonly share: number } | undefined;
  readonly refused: string | undefined;
  readonly shown: ShownStudy | undefined;
  readonly said: string;
}

export interface StudyActions {
  readonly open: (file: File | "example") => void;
  readonly judge: (request: Omit<Extract<StudyRequest, { type: "judge" }>, "type" | "formulary">) => void;
  readonly cancel: () => void;
  readonly download: () => void;
  readonly picture: (name: string) => void;
  readonly calibrate: (site: string) => void;
}

const empty: StudyState = { working: undefined, refused: undefined, shown: undefined, said: "" };

/** Keeps the worker that reads and judges; cancelling ends it, and the next file gets a new one. */
export function useStudy(formulary: Formulary | undefined): {
  readonly state: StudyState;
  readonly actions: StudyActions;
} {
  const [state, setState] = useState(empty);
  const worker = useRef<Worker | undefined>(undefined);
  useEffect(() => () => worker.current?.terminate(), []);

  const take = (answer: StudyAnswer): void => {
    setState((before): StudyState => {
      switch (answer.type) {
        case "progress":
          return { ...before, working: answer };
        case "failed":
          return { ...before, working: undefined, refused: answer.sentence, said: "" };
        case "judged":
          return {
            working: undefined,
            refused: undefined,
            shown: answer.study,
            said: messages.ready(answer.study.title),
          };
        case "file":
          return { ...before, said: messages.saved(answer.name) };
        case "no-calibration":
          return { ...before, said: messages.notCalibrated(answer.sentence) };
      }
    });
    if (answer.type === "file") saveFile({ name: answer.name, bytes: answer.bytes, type: answer.mime });
  };

  const start = (): Worker => {
    worker.current?.terminate();
    const own = new Worker(new URL("./study-worker.ts", import.meta.url), { type: "module" });
    own.onmessage = ({ data }: MessageEvent<StudyAnswer>) => take(data);
    own.onerror = () => take({ type: "failed", sentence: messages.failed });
    worker.current = own;
    return own;
  };

  const ask = (request: StudyRequest): void => worker.current?.postMessage(request);
  const work = (): void =>
    setState((before) => ({
      ...before,
      working: { step: "reading", share: 0 },
      refused: undefined,
      said: "",
    }));
  const actions: StudyActions = {
    open: (file) => {
      let today = "";
      watchDay((day) => {
        today = day;
      });
      setState({ ...empty, working: { step: "reading", share: 0 } });
      start().postMessage({ type: "open", file, today, software: versions.software } satisfies StudyRequest);
    },
    judge: (request) => {
      work();
      ask({ type: "judge", ...request, formulary });
    },
    cancel: () => {
      worker.current?.terminate();
      worker.current = undefined;
      setState({ ...empty, said: messages.cancelled });
    },
    download: () => {
      setState((before) => ({ ...before, said: messages.preparing }));
      ask({ type: "files" });
    },
    picture: (name) => ask({ type: "figure", name }),
    calibrate: (site) => ask({ type: "calibration", site }),
  };
  return { state, actions };
}
