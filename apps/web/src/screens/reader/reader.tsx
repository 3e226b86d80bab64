import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { askingTag } from "../../effects/asking-tag.ts";
import type { ScreenProps } from "../../frame/screen-props.ts";
import { readerMessages } from "../../messages/reader.ts";
import { siteInUse } from "../../state/site-in-use.ts";
import { Agreement } from "./agreement.tsx";
import { AnswerForm } from "./answer-form.tsx";
import { AskElsewhere } from "./ask-elsewhere.tsx";
import { compareReadings } from "./compare-readings.ts";
import { OtherDevice } from "./other-device.tsx";
import { type Reading, readAskCode } from "./reading-code.ts";
import "./reader.css";
import { ReadingFields } from "./reading-fields.tsx";
import { StageHeading } from "./stage-heading.tsx";

type Stage =
  | { readonly type: "choosing" }
  /** The device is in the hands of the second reader: nothing of the first reading is on the screen. */
  | { readonly type: "blind" }
  | { readonly type: "compared"; readonly reading: Reading };

/** A second person measures, blind, on this device or on another; how far the two agree, and what to do about it. */
export function Screen({ path, child, texts, site, send }: ScreenProps): VNode {
  const [stage, setStage] = useState<Stage>({ type: "choosing" });
  const asked = readAskCode(path);
  if (asked !== undefined) return <OtherDevice tag={asked} />;
  const first = child?.measurements;
  if (child === undefined || (first?.lengthCm === undefined && first?.armMm === undefined)) {
    return (
      <div class="reader">
        <p>{readerMessages.intro}</p>
        <p>
          {readerMessages.nothingYet} <a href="#/">{readerMessages.toBedside}</a>
        </p>
        <AnswerForm />
      </div>
    );
  }
  if (stage.type === "blind") {
    return (
      <div class="reader">
        <StageHeading words={readerMessages.blindTitle} />
        <p>{readerMessages.blindIntro}</p>
        <ReadingFields
          doneWord={readerMessages.done}
          onDone={(reading) => setStage({ type: "compared", reading })}
          onCancel={() => setStage({ type: "choosing" })}
        />
      </div>
    );
  }
  if (stage.type === "compared") {
    const comparison = compareReadings(child, stage.reading, siteInUse(site));
    return (
      <Agreement
        comparison={comparison}
        onTakeIn={() => {
          const { lengthCm, armMm } = stage.reading;
          send({ type: "second-reading", lengthCm: String(lengthCm), armMm: String(armMm ?? "") });
          if (comparison.needsThird) send({ type: "asked-for", field: "lengthCm3" });
          location.hash = "#/";
        }}
        onDiscard={() => setStage({ type: "choosing" })}
      />
    );
  }
  return (
    <div class="reader">
      <p>{readerMessages.intro}</p>
      <section class="reader__part">
        <h2>{readerMessages.here}</h2>
        <p>{readerMessages.hereHow}</p>
        <button class="button reader__main" type="button" onClick={() => setStage({ type: "blind" })}>
          {readerMessages.handOver}
        </button>
      </section>
      <AskElsewhere
        tag={askingTag(`${texts.lengthCm}|${texts.armMm}`)}
        onAnswer={(reading) => setStage({ type: "compared", reading })}
      />
      <AnswerForm />
    </div>
  );
}
