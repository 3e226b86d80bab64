import { foldCases } from "@steelyard/records/case";
import type { VNode } from "preact";
import { useMemo, useState } from "preact/hooks";
import { DeskRemarks } from "../../components/case-log/desk-remarks.tsx";
import { useCaseDesk } from "../../effects/case-desk/use-case-desk.ts";
import type { ScreenProps } from "../../frame/screen-props.ts";
import { cases } from "../../messages/cases.ts";
import { type CaseFilter, findCases, isWeightDue } from "../../state/casebook.ts";
import "../case-log/case-log.css";
import "./casebook.css";
import { CaseList } from "./case-list.tsx";
import { CasePage } from "./case-page.tsx";
import { Passcode, Unlock } from "./passcode.tsx";
import { Transfer } from "./transfer.tsx";

/** Every case on this device: found, opened, weighed later, taken out and brought in. */
export function Screen({ path }: ScreenProps): VNode {
  const { desk, state } = useCaseDesk();
  const [search, setSearch] = useState("");
  const [filter, setFilter] = useState<CaseFilter>("all");
  const records = useMemo(() => foldCases(state.events), [state.events]);
  const words = cases.casebook;
  const remarks = <DeskRemarks desk={state} onRetry={() => void desk.retry()} />;
  if (state.keeps === "opening") return <p role="status">{words.opening}</p>;
  if (path !== "") {
    const record = records.find(({ caseId }) => caseId === path);
    return (
      <div class="casebook">
        {remarks}
        {state.lock === "locked" && <Unlock desk={desk} />}
        <CasePage key={path} record={record} desk={desk} />
      </div>
    );
  }
  const found = findCases(records, { filter, search });
  const due = records.filter(isWeightDue).length;
  return (
    <div class="casebook">
      <p class="casebook__intro">{words.intro}</p>
      {remarks}
      {state.lock === "locked" && <Unlock desk={desk} />}
      {records.length === 0 && state.lock !== "locked" && <p class="casebook__empty">{words.empty}</p>}
      {records.length > 0 && (
        <>
          <search class="casebook__search">
            <input
              type="search"
              aria-label={words.search}
              placeholder={words.search}
              value={search}
              maxLength={60}
              autocomplete="off"
              spellcheck={false}
              onInput={({ currentTarget }) => setSearch(currentTarget.value)}
            />
            <fieldset class="casebook__filter">
              <legend class="unseen">{words.filter}</legend>
              {filters.map(({ id, word }) => (
                <label key={id} class="casebook__chip">
                  <input
                    type="radio"
                    name="case-filter"
                    checked={filter === id}
                    onChange={() => setFilter(id)}
                  />
                  <span>{words[word]}</span>
                </label>
              ))}
            </fieldset>
          </search>
          <p class="casebook__count" role="status">
            {found.length === 0 ? words.none : words.count(found.length)}
            {due > 0 && `. ${words.weightDue(due)}.`}
          </p>
          <CaseList records={found} />
        </>
      )}
      <Transfer desk={desk} records={records} />
      {state.keeps === "device" && state.lock !== "locked" && <Passcode desk={desk} lock={state.lock} />}
    </div>
  );
}

const filters = [
  { id: "all", word: "filterAll" },
  { id: "due", word: "filterDue" },
  { id: "deleted", word: "filterDeleted" },
] as const;
