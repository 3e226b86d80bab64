import { type Drawing, renderPdf } from "@steelyard/paper";
import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import { loadPaperTypefaces } from "../../effects/paper-typefaces.ts";
import { saveFile } from "../../effects/save-file.ts";
import { sha256 } from "../../effects/sha256.ts";
import { watchDay } from "../../effects/watch-day.ts";
import { paperMessages } from "../../messages/paper.ts";
import { versions } from "../../state/versions.ts";
import { makePaper } from "./make-paper.ts";
import "./paper.css";
import { commandOf, fileNameOf, firstChoices, type PaperChoices } from "./paper-choices.ts";
import { PaperForm } from "./paper-form.tsx";
import { Preview } from "./preview.tsx";

type Made =
  | { readonly state: "drawing" }
  | { readonly state: "refused"; readonly sentences: readonly string[] }
  | { readonly state: "drawn"; readonly drawing: Drawing; readonly today: string };

/** Typing a width is over after this long, ms. */
const pauseMs = 250;

/** Choose a paper, see every page of it, take it home as a PDF. */
export function Screen(): VNode {
  const [choices, setChoices] = useState<PaperChoices>(firstChoices);
  const [made, setMade] = useState<Made>({ state: "drawing" });
  const [said, setSaid] = useState("");

  useEffect(() => {
    let wanted = true;
    setSaid("");
    const pause = setTimeout(() => {
      void draw(choices).then((result) => wanted && setMade(result));
    }, pauseMs);
    return () => {
      wanted = false;
      clearTimeout(pause);
    };
  }, [choices]);

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
        <p class="paper__command">
          <code>{commandOf(choices)}</code>
        </p>
      </div>
      {made.state === "drawing" && <p role="status">{paperMessages.drawing}</p>}
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

async function draw(choices: PaperChoices): Promise<Made> {
  let today = "";
  watchDay((day) => {
    today = day;
  });
  try {
    const typefaces = await loadPaperTypefaces();
    const drawing = await makePaper(choices, { typefaces, sha256, today });
    return drawing.ok
      ? { state: "drawn", drawing: drawing.value, today }
      : { state: "refused", sentences: drawing.error };
  } catch {
    return { state: "refused", sentences: [paperMessages.typefaceMissing] };
  }
}
