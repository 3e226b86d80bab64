import type { VNode } from "preact";
import { readerMessages } from "../../messages/reader.ts";
import { addressOf } from "../../state/screens.ts";
import { CodeForm } from "./code-form.tsx";
import { readAskCode } from "./reading-code.ts";

/** For the second reader, on a device of their own: the code of the first device leads to the blind fields. */
export function AnswerForm(): VNode {
  return (
    <section class="reader__part">
      <h2>{readerMessages.amSecond}</h2>
      <CodeForm
        id="ask-code"
        label={readerMessages.askCode}
        hint={readerMessages.askHint}
        doneWord={readerMessages.go}
        take={(text, from) => {
          // The camera sees the whole address of the page; the code stands at its end.
          const code = (from === "camera" ? text.slice(text.lastIndexOf("/") + 1) : text)
            .trim()
            .toUpperCase();
          if (readAskCode(code) !== undefined) {
            location.hash = addressOf({ screen: "reader", path: code });
            return undefined;
          }
          return from === "field" ? readerMessages.noAsk : undefined;
        }}
      />
    </section>
  );
}
