import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { readerMessages } from "../../messages/reader.ts";
import { addressOf } from "../../state/screens.ts";
import { CodeField } from "./code-field.tsx";
import { readAskCode } from "./reading-code.ts";

/** For the second reader, on a device of their own: the code of the first device leads to the blind fields. */
export function AnswerForm(): VNode {
  const [text, setText] = useState("");
  const [isWrong, setWrong] = useState(false);
  return (
    <form
      class="reader__part"
      autocomplete="off"
      onSubmit={(event) => {
        event.preventDefault();
        if (readAskCode(text) === undefined) setWrong(true);
        else location.hash = addressOf({ screen: "reader", path: text.trim().toUpperCase() });
      }}
    >
      <h2>{readerMessages.amSecond}</h2>
      <CodeField
        id="ask-code"
        label={readerMessages.askCode}
        hint={readerMessages.askHint}
        text={text}
        issue={isWrong ? readerMessages.noAsk : undefined}
        onType={(typed) => {
          setText(typed);
          setWrong(false);
        }}
      />
      <button class="button" type="submit">
        {readerMessages.go}
      </button>
    </form>
  );
}
