import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { canScan } from "../../effects/scan-code.ts";
import { readerMessages } from "../../messages/reader.ts";
import { Camera } from "./camera.tsx";
import { CodeField } from "./code-field.tsx";

interface Props {
  readonly id: string;
  readonly label: string;
  readonly hint: string;
  readonly doneWord: string;
  /** Takes a code that was typed or seen; says what is wrong with it, or nothing where it was taken or is to be passed over. */
  readonly take: (text: string, from: "field" | "camera") => string | undefined;
}

/** The code of another device: typed, or read by the camera where there is one. */
export function CodeForm({ id, label, hint, doneWord, take }: Props): VNode {
  const [text, setText] = useState("");
  const [issue, setIssue] = useState<string | undefined>(undefined);
  const [scans, setScans] = useState(false);
  return (
    <>
      <form
        class="reader__form"
        autocomplete="off"
        onSubmit={(event) => {
          event.preventDefault();
          setIssue(take(text, "field"));
        }}
      >
        <CodeField
          id={id}
          label={label}
          hint={hint}
          text={text}
          issue={issue}
          onType={(typed) => {
            setText(typed);
            setIssue(undefined);
          }}
        />
        <div class="reader__ways">
          <button class="button" type="submit">
            {doneWord}
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
          onCode={(seen) => setIssue(take(seen, "camera"))}
          onFail={() => {
            setScans(false);
            setIssue(readerMessages.noCamera);
          }}
        />
      )}
    </>
  );
}
