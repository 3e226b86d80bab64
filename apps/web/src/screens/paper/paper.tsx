import { type BookletProgress, type Drawing, renderPdf } from "@steelyard/paper";
import type { VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { loadPaperTypefaces } from "../../effects/paper-typefaces.ts";
import { saveFile } from "../../effects/save-file.ts";
import { sha256 } from "../../effects/sha256.ts";
import { watchDay } from "../../effects/watch-day.ts";
import type { ScreenProps } from "../../frame/screen-props.ts";
import { paperMessages } from "../../messages/paper.ts";
import { siteInUse } from "../../state/site-in-use.ts";
import { versions } from "../../state/versions.ts";
import { makePaper, type PaperTools } from "./make-paper.ts";
import { measuredWords } from "./measured-words.ts";
import "./paper.css";
import { commandOf, fileNameOf, firstChoices, type PaperChoices } from "./paper-choices.ts";
import { PaperForm } from "./paper-form.tsx";
import { Preview } from "./preview.tsx";

type Made =
  | { readonly state: "drawing"; readonly progress?: BookletProgress }
  | { readonly state: "cancelled" }
  | { readonly state: "refused"; readonly sentences: readonly string[] }
  | { readonly state: "drawn"; readonly drawing: Drawing; readonly today: string };

/** Typing a width is over after this long, ms. */
const pauseMs = 250;

/** Choose a paper, see every page of it, take it home as a PDF. */
export function Screen({ child, site }: ScreenProps): VNode {
  const [choices, setChoices] = useState<PaperChoices>(() => {
    const own = siteInUse(site);
    return own === undefined
      ? firstChoices
      : { ...firstChoices, site: { file: own.identity.name, value: own } };
  });
  const [made, setMade] = useState<Made>({ state: "drawing" });
  const [said, setSaid] = useState("");
  const [tries, setTries] = useState(0);
  /** Gives up what is being drawn. */
  const giveUp = useRef(() => {});

  useEffect(() => {
    let wanted = true;
    setSaid("");
    const pause = setTimeout(() => {
      // What is drawn within a blink takes the place of what was there; a booklet leaves it empty meanwhile.
      if (choices.kind === "booklet") setMade({ state: "drawing" });
      void draw(choices, {
        child,
        measured: measuredWords(child?.measurements ?? {}),
        onProgress: (progress) => wanted && setMade({ state: "drawing", progress }),
        // A timer, since a promise alone would not let the screen paint.
        pause: () => new Promise((resolve) => setTimeout(() => resolve(wanted))),
      }).then((result) => wanted && result !== undefined && setMade(result));
    }, pauseMs);
    giveUp.current = () => {
      wanted = false;
      clearTimeout(pause);
    };
    return giveUp.current;
  }, [choices, child, tries]);

  const download = async ({ drawing, today }: Extract<Made, { state: "drawn" }>): Promise<void> => {
    const name = fileNameOf(choices);
    setSaid(paperMessages.making);
    try {
      const typefaces = await loadPaperTypefaces();
      const creator = `steelyard ${versions.software}`;
      const bytes = await renderPdf(drawing, { typefaces, madeOn: today, creator });
      saveFile({ name, bytes, type: "application/pdf" });
      setSaid(paperMessages.made(name));
    } catch {
      setSaid(`${paperMessages.notMade} ${commandOf(choices)}`);
    }
  };

  return (
    <div class="paper">
      <div class="paper__choices">
        <p>{paperMessages.intro}</p>
        <PaperForm choices={choices} onChoose={setChoices} />
        {made.state === "drawn" && (
          <button class="button paper__download" type="button" onClick={() => void download(made)}>
            {paperMessages.download(made.drawing.pages.length)}
          </button>
        )}
        <p role="status">{said}</p>
        {choices.kind !== "child" && choices.kind !== "labels" && (
          <p class="paper__command">
            <code>{commandOf(choices)}</code>
          </p>
        )}
      </div>
      {made.state === "drawing" && (
        <div>
          <p role="status">{paperMessages.drawing}</p>
          {made.progress !== undefined && (
            <div class="paper__progress">
              <progress
                value={made.progress.done}
                max={made.progress.of}
                aria-label={paperMessages.drawing}
              />
              <p>{paperMessages.progress(made.progress.done, made.progress.of)}</p>
              <button
                class="button"
                type="button"
                onClick={() => {
                  giveUp.current();
                  setMade({ state: "cancelled" });
                }}
              >
                {paperMessages.cancel}
              </button>
            </div>
          )}
        </div>
      )}
      {made.state === "cancelled" && (
        <div>
          <p role="status">{paperMessages.cancelled}</p>
          <button class="button" type="button" onClick={() => setTries(tries + 1)}>
            {paperMessages.drawAgain}
          </button>
        </div>
      )}
      {made.state === "refused" && (
        <div role="alert" class="paper__refused">
          {made.sentences.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      )}
      {made.state === "drawn" && <Preview drawing={made.drawing} />}
    </div>
  );
}

async function draw(
  choices: PaperChoices,
  tools: Pick<PaperTools, "child" | "measured" | "onProgress" | "pause">,
): Promise<Made | undefined> {
  let today = "";
  watchDay((day) => {
    today = day;
  });
  try {
    const typefaces = await loadPaperTypefaces();
    const drawing = await makePaper(choices, { ...tools, typefaces, sha256, today });
    if (drawing === undefined) return undefined;
    return drawing.ok
      ? { state: "drawn", drawing: drawing.value, today }
      : { state: "refused", sentences: drawing.error };
  } catch {
    return { state: "refused", sentences: [paperMessages.typefaceMissing] };
  }
}
