import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { QrCode } from "../../components/qr-code/qr-code.tsx";
import { readerMessages } from "../../messages/reader.ts";
import { answerCode, type Reading, type Tag } from "./reading-code.ts";
import { ReadingFields } from "./reading-fields.tsx";
import { StageHeading } from "./stage-heading.tsx";

/** The second reader's own device: blind fields, then a code that carries what was read back to the first one. */
export function OtherDevice({ tag }: { readonly tag: Tag }): VNode {
  const [reading, setReading] = useState<Reading | undefined>(undefined);
  if (reading === undefined) {
    return (
      <div class="reader">
        <StageHeading words={readerMessages.blindTitle} />
        <p>{readerMessages.blindIntro}</p>
        <ReadingFields doneWord={readerMessages.showCode} onDone={setReading} />
      </div>
    );
  }
  const code = answerCode({ tag, ...reading });
  return (
    <div class="reader">
      <StageHeading words={readerMessages.answerTitle} />
      <output class="reader__sign">{code}</output>
      <QrCode text={code.replace(" ", "")} label={readerMessages.answerTitle} />
      <button class="button" type="button" onClick={() => setReading(undefined)}>
        {readerMessages.again}
      </button>
    </div>
  );
}
