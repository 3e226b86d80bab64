import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import type { ScreenProps } from "../../frame/screen-props.ts";
import { language } from "../../messages/language.ts";
import { paperMessages } from "../../messages/paper.ts";
import { siteInUse } from "../../state/site-in-use.ts";
import { describeRefusal } from "./describe-refusal.ts";
import "./paper.css";
import { commandOf, firstChoices, isOfChild, languageOf, type PaperChoices } from "./paper-choices.ts";
import { PaperForm } from "./paper-form.tsx";
import { Preview } from "./preview.tsx";
import { usePaper } from "./use-paper.ts";

/** Choose a paper, see every page of it, take it home as a PDF. */
export function Screen({ child, site, formulary }: ScreenProps): VNode {
  const [choices, setChoices] = useState<PaperChoices>(() => {
    const own = siteInUse(site);
    const first = { ...firstChoices, language: languageOf(language?.tag) };
    return own === undefined ? first : { ...first, site: { file: own.identity.name, value: own } };
  });
  // Known a moment after the screen where the page is opened here; another one comes when the next child does.
  useEffect(() => {
    const own = formulary?.own?.formulary;
    if (own !== undefined)
      setChoices((before) => ({ ...before, formulary: { file: own.version, value: own } }));
  }, [formulary]);
  const { made, said, turnTo, download, cancel, drawAgain } = usePaper(choices, child?.measurements);
  return (
    <div class="paper">
      <div class="paper__choices">
        <p>{paperMessages.intro}</p>
        <PaperForm choices={choices} onChoose={setChoices} />
        {made.state === "drawn" && (
          <button class="button paper__download" type="button" onClick={download}>
            {paperMessages.download(made.shown.pages)}
          </button>
        )}
        <p role="status">{said}</p>
        {!isOfChild(choices.kind) && (
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
              <button class="button" type="button" onClick={cancel}>
                {paperMessages.cancel}
              </button>
            </div>
          )}
        </div>
      )}
      {made.state === "cancelled" && (
        <div>
          <p role="status">{paperMessages.cancelled}</p>
          <button class="button" type="button" onClick={drawAgain}>
            {paperMessages.drawAgain}
          </button>
        </div>
      )}
      {made.state === "refused" && (
        <div role="alert" class="paper__refused">
          {describeRefusal(made.refusal, commandOf(choices)).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      )}
      {made.state === "drawn" && <Preview shown={made.shown} onTurn={turnTo} />}
    </div>
  );
}
