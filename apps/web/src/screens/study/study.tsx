import type { VNode } from "preact";
import { useId, useState } from "preact/hooks";
import type { ScreenProps } from "../../frame/screen-props.ts";
import { study as messages } from "../../messages/study.ts";
import "./study.css";
import { StudyChoices } from "./study-choices.tsx";
import { StudyReport } from "./study-report.tsx";
import { useStudy } from "./use-study.ts";

/** From a file of weighed children to the flow, figures and tables; the file stays on the device, in a worker. */
export function Screen({ formulary }: ScreenProps): VNode {
  const { state, actions } = useStudy(formulary?.own?.formulary);
  const [site, setSite] = useState("");
  const [over, setOver] = useState(false);
  const id = useId();
  const { working, refused, shown, said } = state;
  const byLooks = shown?.mapping.filter(({ by, role }) => by === "looks" && role.type === "field") ?? [];
  return (
    <div class="study">
      <p>{messages.intro}</p>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: dropping is a second way to what the field inside does */}
      <div
        class={over ? "study__drop study__drop--over" : "study__drop"}
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(event) => {
          event.preventDefault();
          setOver(false);
          const [file] = event.dataTransfer?.files ?? [];
          if (file !== undefined) actions.open(file);
        }}
      >
        <label for={id}>
          <b>{messages.choose}</b> <span id={`${id}-hint`}>{messages.chooseHint}</span>
        </label>
        <input
          id={id}
          type="file"
          aria-describedby={`${id}-hint`}
          onChange={({ currentTarget }) => {
            const [file] = currentTarget.files ?? [];
            if (file !== undefined) actions.open(file);
            // The same file again is a change as well.
            currentTarget.value = "";
          }}
        />
        <button class="button" type="button" onClick={() => actions.open("example")}>
          {messages.example}
        </button>
      </div>
      {working !== undefined && (
        <div class="study__working">
          <progress aria-label={messages.steps[working.step]} value={working.share} />
          <button class="button" type="button" onClick={actions.cancel}>
            {messages.cancel}
          </button>
        </div>
      )}
      <p role="status">{working === undefined ? said : messages.working(messages.steps[working.step])}</p>
      {refused !== undefined && (
        <p role="alert" class="study__refused">
          {refused}
        </p>
      )}
      {byLooks.length > 0 && (
        <p role="alert" class="study__refused">
          {messages.confirm(byLooks.map(({ column }) => column).join(", "))}
        </p>
      )}
      {shown !== undefined && (
        <>
          <StudyChoices
            key={shown.title}
            shown={shown}
            busy={working !== undefined}
            onJudge={actions.judge}
          />
          <div class="study__take">
            <button class="button study__download" type="button" onClick={actions.download}>
              {messages.downloadReport}
            </button>
            <label class="study__site">
              {messages.siteName}
              <input
                type="text"
                maxLength={200}
                value={site}
                onInput={({ currentTarget }) => setSite(currentTarget.value)}
              />
            </label>
            <button
              class="button"
              type="button"
              onClick={() => actions.calibrate(site.trim() || messages.unnamed)}
            >
              {messages.downloadCalibration}
            </button>
          </div>
          <StudyReport title={shown.title} blocks={shown.blocks} onPicture={actions.picture} />
        </>
      )}
    </div>
  );
}
