import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { QrCode } from "../../components/qr-code/qr-code.tsx";
import { readerEn } from "../../messages/reader.en.ts";
import { answerCode, type Reading, type Tag } from "./reading-code.ts";
import { ReadingFields } from "./reading-fields.tsx";

/** The second reader's own device: blind fields, then a code that carries what was read back to the first one. */
export function OtherDevice({ tag }: { readonly tag: Tag }): VNode {
  const [reading, setReading] = useState<Reading | undefined>(undefined);
  if (reading === undefined) {
    return (
      <div class="reader">
        <h2>{readerEn.blindTitle}</h2>
        <p>{readerEn.blindIntro}</p>
        <ReadingFields doneWord={readerEn.showCode} onDone={setReading} />
      </div>
    );
  }
  const code = answerCode({ tag, ...reading });
  return (
    <div class="reader">
      <h2>{readerEn.answerTitle}</h2>
      <output class="reader__sign">{code}</output>
      <QrCode text={code.replace(" ", "")} label={readerEn.answerTitle} />
      <button class="button" type="button" onClick={() => setReading(undefined)}>
        {readerEn.again}
      </button>
    </div>
  );
}
