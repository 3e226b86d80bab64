import {
  type ColumnMapping,
  type ColumnRole,
  type MappingChange,
  STUDY_FIELDS,
} from "@steelyard/study/columns";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { study as messages } from "../../messages/study.ts";
import { CompareChoices } from "./compare-choices.tsx";
import type { ShownStudy, StudyRequest } from "./study-job.ts";

const UNITS = ["mm", "cm", "m", "in", "kg", "g", "lb", "mo", "y", "d"] as const;
type Unit = NonNullable<ColumnMapping["unit"]>;
/** Columns that are shown to be changed; a file with more is mapped at the command line. */
const MOST_COLUMNS = 60;

interface Props {
  readonly shown: ShownStudy;
  readonly busy: boolean;
  readonly onJudge: (request: Omit<Extract<StudyRequest, { type: "judge" }>, "type">) => void;
}

/** What is judged, by which groups, and what each column is: changed together, judged again at once. */
export function StudyChoices({ shown, busy, onJudge }: Props): VNode {
  const [methods, setMethods] = useState<readonly string[]>(shown.chosenMethods);
  const [by, setBy] = useState<readonly string[]>(shown.chosenGroups);
  const [compared, setCompared] = useState(shown.compared);
  const [changes, setChanges] = useState<readonly MappingChange[]>([]);
  const change = (next: MappingChange): void =>
    setChanges((before) => [...before.filter(({ column }) => column !== next.column), next]);
  return (
    <form
      class="study__choices"
      onSubmit={(event) => {
        event.preventDefault();
        // What stands as it was taken is a person's word too, once it has been looked at.
        const looked = shown.mapping.filter(({ by: how, role }) => how === "looks" && role.type === "field");
        const confirmed = looked.map(
          ({ column, role, unit }): MappingChange => ({
            column,
            role,
            ...(unit === undefined ? {} : { unit }),
          }),
        );
        const changed = new Set(changes.map(({ column }) => column));
        onJudge({
          changes: [...changes, ...confirmed.filter(({ column }) => !changed.has(column))],
          methods,
          by,
          compared,
        });
      }}
    >
      <details>
        <summary>{messages.methods}</summary>
        <Choices legend={messages.methods} options={shown.methods} chosen={methods} onChoose={setMethods} />
      </details>
      <details>
        <summary>{messages.groups}</summary>
        <Choices
          legend={messages.groups}
          options={shown.groups.map((id) => ({ id, name: id }))}
          chosen={by}
          onChoose={setBy}
        />
      </details>
      <details>
        <summary>{messages.comparison}</summary>
        <CompareChoices
          shown={shown}
          methods={methods}
          compared={compared}
          onChange={(next) => setCompared((before) => ({ ...before, ...next }))}
        />
      </details>
      <details>
        <summary>{messages.columns}</summary>
        <ul class="study__columns">
          {shown.mapping.slice(0, MOST_COLUMNS).map((own) => (
            <ColumnChoice
              key={own.column}
              own={own}
              changed={changes.find(({ column }) => column === own.column)}
              onChange={change}
            />
          ))}
        </ul>
      </details>
      <button class="button" type="submit" disabled={busy}>
        {messages.apply}
      </button>
    </form>
  );
}

function Choices(given: {
  legend: string;
  options: readonly { readonly id: string; readonly name: string }[];
  chosen: readonly string[];
  onChoose: (chosen: readonly string[]) => void;
}): VNode {
  const { legend, options, chosen, onChoose } = given;
  return (
    <fieldset>
      <legend class="unseen">{legend}</legend>
      {options.map(({ id, name }) => (
        <label key={id} class="study__option">
          <input
            type="checkbox"
            checked={chosen.includes(id)}
            onChange={({ currentTarget }) =>
              onChoose(currentTarget.checked ? [...chosen, id] : chosen.filter((own) => own !== id))
            }
          />
          {name}
        </label>
      ))}
    </fieldset>
  );
}

function ColumnChoice({
  own,
  changed,
  onChange,
}: {
  readonly own: ColumnMapping;
  readonly changed: MappingChange | undefined;
  readonly onChange: (change: MappingChange) => void;
}): VNode {
  const role = changed?.role ?? own.role;
  const unit = changed === undefined ? own.unit : changed.unit;
  const tell = (next: { role?: ColumnRole; unit?: Unit | undefined }): void => {
    const newUnit = "unit" in next ? next.unit : unit;
    onChange({
      column: own.column,
      role: next.role ?? role,
      ...(newUnit === undefined ? {} : { unit: newUnit }),
    });
  };
  return (
    <li>
      <b>{own.column}</b>
      <select
        aria-label={`${own.column}: ${messages.takenFor}`}
        value={wordOf(role)}
        onChange={({ currentTarget }) => tell({ role: roleOf(currentTarget.value) })}
      >
        {STUDY_FIELDS.map((field) => (
          <option key={field} value={field}>
            {messages.fields[field]}
          </option>
        ))}
        {(["estimate", "group", "left"] as const).map((word) => (
          <option key={word} value={word}>
            {messages.roles[word]}
          </option>
        ))}
      </select>
      <select
        aria-label={`${own.column}: ${messages.unit}`}
        value={unit ?? ""}
        onChange={({ currentTarget }) => tell({ unit: UNITS.find((one) => one === currentTarget.value) })}
      >
        <option value="">{messages.noUnit}</option>
        {UNITS.map((one) => (
          <option key={one} value={one}>
            {one}
          </option>
        ))}
      </select>
    </li>
  );
}

function wordOf(role: ColumnRole): string {
  return role.type === "field" ? role.field : role.type;
}

function roleOf(word: string): ColumnRole {
  const field = STUDY_FIELDS.find((own) => own === word);
  if (field !== undefined) return { type: "field", field };
  return { type: word === "estimate" || word === "group" ? word : "left" };
}
