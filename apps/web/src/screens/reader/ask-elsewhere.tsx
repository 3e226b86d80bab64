import type { VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { QrCode } from "../../components/qr-code/qr-code.tsx";
import { canScan, scanCodes } from "../../effects/scan-code.ts";
import { readerMessages } from "../../messages/reader.ts";
import { addressOf } from "../../state/screens.ts";
import { CodeField } from "./code-field.tsx";
import { askCode, type Reading, readAnswerCode, type Tag } from "./reading-code.ts";

interface Props {
  readonly tag: Tag;
  readonly onAnswer: (reading: Reading) => void;
}

/** The code that opens this page on another device, and the way back for its answer. */
export function AskElsewhere({ tag, onAnswer }: Props): VNode {
  const [text, setText] = useState("");
  const [issue, setIssue] = useState<string | undefined>(undefined);
  const [scans, setScans] = useState(false);
  const code = askCode(tag);
  const take = (typed: string, isTyped: boolean): void => {
    const answer = readAnswerCode(typed, tag);
    if (answer.type === "reading") onAnswer(answer.reading);
    else if (answer.type === "other-asking") setIssue(readerMessages.otherAsking);
    // A camera sees other codes as well.
    else if (isTyped) setIssue(readerMessages.mistyped);
  };
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
      <form
        class="reader__form"
        autocomplete="off"
        onSubmit={(event) => {
          event.preventDefault();
          take(text, true);
        }}
      >
        <CodeField
          id="answer-code"
          label={readerMessages.answerCode}
          hint={readerMessages.answerHint}
          text={text}
          issue={issue}
          onType={(typed) => {
            setText(typed);
            setIssue(undefined);
          }}
        />
        <div class="reader__ways">
          <button class="button" type="submit">
            {readerMessages.compare}
          </button>
          {canScan() && (
            <button class="button" type="button" onClick={() => setScans(!scans)}>
              {scans ? readerMessages.stopScanning : readerMessages.scan}
            </button>
          )}
        </div>
      </form>
      {scans && (
        <Camera
          onCode={(seen) => take(seen, false)}
          onFail={() => {
            setScans(false);
            setIssue(readerMessages.noCamera);
          }}
        />
      )}
    </section>
  );
}

function Camera({
  onCode,
  onFail,
}: {
  readonly onCode: (text: string) => void;
  readonly onFail: () => void;
}): VNode {
  const video = useRef<HTMLVideoElement>(null);
  const tell = useRef(onCode);
  tell.current = onCode;
  useEffect(() => {
    let stop = (): void => undefined;
    let isOver = false;
    if (video.current !== null) {
      scanCodes(video.current, (text) => tell.current(text)).then(
        (end) => {
          stop = end;
          if (isOver) stop();
        },
        () => !isOver && onFail(),
      );
    }
    return () => {
      isOver = true;
      stop();
    };
  }, []);
  return (
    <div>
      <p role="status">{readerMessages.scanning}</p>
      <video ref={video} class="reader__camera" muted playsInline />
    </div>
  );
}
