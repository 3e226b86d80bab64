import { describeProblem } from "@steelyard/core/wording";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { FileChoice } from "../../components/file-choice/file-choice.tsx";
import { languageNames } from "../../components/language/language-context.ts";
import { language } from "../../messages/language.ts";
import { paperMessages } from "../../messages/paper.ts";
import { formularyIndex } from "../../state/formulary-index.ts";
import {
  holdsDoses,
  type PaperChoices,
  pagesOf,
  paperKinds,
  paperLanguages,
  withKind,
} from "./paper-choices.ts";
import { readFormularyFile, readSiteFile } from "./read-site-file.ts";

interface Props {
  readonly choices: PaperChoices;
  readonly onChoose: (choices: PaperChoices) => void;
}

const knownProblems = formularyIndex.problems.map(({ problem }) => problem);

/** Which paper, on what, for which problems and which site. */
export function PaperForm({ choices, onChoose }: Props): VNode {
  const [siteRefused, setSiteRefused] = useState<readonly string[]>([]);
  const [formularyRefused, setFormularyRefused] = useState<readonly string[]>([]);
  const { kind, page, rollWidth, site, formulary } = choices;
  return (
    <>
      <Choice
        name="paper-kind"
        legend={paperMessages.kind}
        options={paperKinds.map((own) => [own, paperMessages.kinds[own]] as const)}
        value={kind}
        onChoose={(own) => onChoose(withKind(choices, own))}
      />
      <Choice
        name="paper-page"
        legend={paperMessages.page}
        options={pagesOf(kind).map((own) => [own, paperMessages.pages[own]] as const)}
        value={page}
        onChoose={(own) => onChoose({ ...choices, page: own })}
      />
      {page === "roll" && (
        <label class="paper__width">
          {paperMessages.rollWidth}
          <input
            type="text"
            inputMode="decimal"
            value={rollWidth}
            onInput={({ currentTarget }) => onChoose({ ...choices, rollWidth: currentTarget.value })}
          />
          {paperMessages.rollWidthUnit}
        </label>
      )}
      <Choice
        name="paper-language"
        legend={paperMessages.language}
        options={paperLanguages.map((own) => [own, languageNames[own]] as const)}
        value={choices.language}
        onChoose={(own) => onChoose({ ...choices, language: own })}
      />
      {choices.language === "fr" && <p class="paper__hint">{paperMessages.unreviewed}</p>}
      {kind === "labels" && (
        <div class="choice-field__options">
          <label>
            <input
              type="checkbox"
              checked={choices.classColours}
              onChange={({ currentTarget }) => onChoose({ ...choices, classColours: currentTarget.checked })}
            />
            <span>{paperMessages.classColours}</span>
          </label>
        </div>
      )}
      {holdsDoses(kind) && (
        <fieldset class="choice-field">
          <legend>{paperMessages.problems}</legend>
          <div class="choice-field__options">
            {knownProblems.map((problem) => (
              <label key={problem}>
                <input
                  type="checkbox"
                  checked={choices.problems.includes(problem)}
                  onChange={({ currentTarget }) =>
                    onChoose({
                      ...choices,
                      problems: knownProblems.filter((own) =>
                        own === problem ? currentTarget.checked : choices.problems.includes(own),
                      ),
                    })
                  }
                />
                <span>{describeProblem(problem, language?.messages)}</span>
              </label>
            ))}
          </div>
        </fieldset>
      )}
      <FileChoice
        label={paperMessages.site}
        hint={paperMessages.siteHint}
        taken={site && { takeOff: paperMessages.takeOff(site.file) }}
        refused={siteRefused}
        onText={(file, text) => {
          const read = readSiteFile(file, text);
          setSiteRefused(read.ok ? [] : read.error);
          if (read.ok) onChoose({ ...choices, site: read.value });
        }}
        onTakeOff={() => {
          const { site: _, ...rest } = choices;
          onChoose(rest);
        }}
      />
      <FileChoice
        label={paperMessages.formulary}
        hint={paperMessages.formularyHint}
        taken={formulary && { takeOff: paperMessages.takeOff(formulary.file) }}
        refused={formularyRefused}
        onText={(file, text) => {
          const read = readFormularyFile(file, text);
          setFormularyRefused(read.ok ? [] : read.error);
          if (read.ok) onChoose({ ...choices, formulary: read.value });
        }}
        onTakeOff={() => {
          const { formulary: _, ...rest } = choices;
          onChoose(rest);
        }}
      />
    </>
  );
}

interface ChoiceProps<T extends string> {
  readonly name: string;
  readonly legend: string;
  readonly options: readonly (readonly [T, string])[];
  readonly value: T;
  readonly onChoose: (value: T) => void;
}

function Choice<T extends string>({ name, legend, options, value, onChoose }: ChoiceProps<T>): VNode {
  return (
    <fieldset class="choice-field">
      <legend>{legend}</legend>
      <div class="choice-field__options">
        {options.map(([option, word]) => (
          <label key={option}>
            <input
              type="radio"
              name={name}
              value={option}
              checked={value === option}
              onChange={() => onChoose(option)}
            />
            <span>{word}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
