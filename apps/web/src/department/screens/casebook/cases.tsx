import { casesAnswerSchema } from "@steelyard/records/department";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import type { Asked } from "../../api/ask.ts";
import { Answer } from "../../components/answer.tsx";
import { DayRange, isBackward } from "../../components/day-range.tsx";
import { SelectLine } from "../../components/select-line.tsx";
import { TextField } from "../../components/text-field.tsx";
import type { ScreenProps } from "../../frame/screen-props.ts";
import { words } from "../../messages/index.ts";
import { useAnswer } from "../../state/department-context.ts";
import { CaseSummaries } from "./case-summaries.tsx";
import { OneCase } from "./one-case.tsx";

const unfiltered = { from: "", to: "", state: "", due: "", code: "" };
type Filter = typeof unfiltered;

/** The question behind a filter; nothing is asked for what is not filled in. */
export function casesQuery(
  { code, ...filter }: Filter,
  before: string | undefined,
): NonNullable<Asked<unknown>["query"]> {
  return { ...filter, code: code.trim().toUpperCase(), before, limit: "50" };
}

/** The cases of the department, or one of them. */
export function Cases({ path, person }: ScreenProps): VNode {
  const [caseId] = path;
  const [typed, setTyped] = useState<Filter>(unfiltered);
  const [shown, setShown] = useState<Filter>(unfiltered);
  /** Where the pages before this one begin. */
  const [pages, setPages] = useState<readonly string[]>([]);
  if (caseId !== undefined) return <OneCase key={caseId} caseId={caseId} person={person} />;
  const { register } = words;
  return (
    <div class="stack wide">
      <p class="soft">{register.intro}</p>
      <form
        class="filters"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          if (isBackward(typed)) return;
          setPages([]);
          setShown(typed);
        }}
      >
        <DayRange days={typed} onType={(days) => setTyped({ ...typed, ...days })} />
        <SelectLine
          label={register.state}
          value={typed.state}
          options={[
            ["", register.states.all],
            ["open", register.states.open],
            ["closed", register.states.closed],
          ]}
          onChoose={(state) => setTyped({ ...typed, state })}
        />
        <SelectLine
          label={register.due}
          value={typed.due}
          options={[
            ["", register.dues.all],
            ["weight", register.dues.weight],
          ]}
          onChoose={(due) => setTyped({ ...typed, due })}
        />
        <TextField
          label={register.code}
          value={typed.code}
          maxLength={40}
          onType={(code) => setTyped({ ...typed, code })}
        />
        <button class="button" type="submit">
          {words.show}
        </button>
      </form>
      <CaseList filter={shown} pages={pages} onPages={setPages} />
    </div>
  );
}

interface ListProps {
  readonly filter: Filter;
  readonly pages: readonly string[];
  readonly onPages: (pages: readonly string[]) => void;
}

function CaseList({ filter, pages, onPages }: ListProps): VNode {
  const { register } = words;
  const answer = useAnswer({
    path: "cases",
    query: casesQuery(filter, pages.at(-1)),
    schema: casesAnswerSchema,
  });
  return (
    <Answer answer={answer}>
      {({ cases, next }) => (
        <>
          {cases.length === 0 ? (
            <p class="casebook__empty">{register.none}</p>
          ) : (
            <CaseSummaries cases={cases} />
          )}
          <p class="row screen-only">
            {pages.length > 0 && (
              <button class="button" type="button" onClick={() => onPages(pages.slice(0, -1))}>
                {register.newer}
              </button>
            )}
            {next !== undefined && (
              <button class="button" type="button" onClick={() => onPages([...pages, next])}>
                {register.older}
              </button>
            )}
          </p>
        </>
      )}
    </Answer>
  );
}
