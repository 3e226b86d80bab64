import type { VNode } from "preact";
import { QrCode } from "../../components/qr-code/qr-code.tsx";
import { readerMessages } from "../../messages/reader.ts";
import { addressOf } from "../../state/screens.ts";
import { CodeForm } from "./code-form.tsx";
import { askCode, type Reading, readAnswerCode, type Tag } from "./reading-code.ts";

interface Props {
  readonly tag: Tag;
  readonly onAnswer: (reading: Reading) => void;
}

/** The code that opens this page on another device, and the way back for its answer. */
export function AskElsewhere({ tag, onAnswer }: Props): VNode {
  const code = askCode(tag);
  return (
    <section class="reader__part">
      <h2>{readerMessages.elsewhere}</h2>
      <p>{readerMessages.elsewhereHow}</p>
      <div class="reader__ask">
        <QrCode
          text={`${location.origin}${location.pathname}${addressOf({ screen: "reader", path: code })}`}
          label={readerMessages.askCode}
        />
        <p>
          {readerMessages.askCode}
          <output class="reader__sign">{code}</output>
        </p>
      </div>
      <CodeForm
        id="answer-code"
        label={readerMessages.answerCode}
        hint={readerMessages.answerHint}
        doneWord={readerMessages.compare}
        take={(text, from) => {
          const answer = readAnswerCode(text, tag);
          if (answer.type === "other-asking") return readerMessages.otherAsking;
          if (answer.type === "reading") onAnswer(answer.reading);
          // A camera sees other codes as well.
          else if (from === "field") return readerMessages.mistyped;
          return undefined;
        }}
      />
    </section>
  );
}
