import type { Technique } from "@steelyard/paper/drawings";
import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { techniqueMessages } from "../../messages/technique.ts";
import type { TypedField } from "../../state/bedside-state.ts";
import { TechniqueFigure } from "./technique-figure.tsx";
import { techniquesOf } from "./techniques-of.ts";

interface Props {
  readonly field: TypedField;
  readonly posture: string;
  readonly people: string;
  readonly onClose: () => void;
}

/** How one measurement is taken: drawing and short words. */
export function TechniqueHelp({ field, posture, people, onClose }: Props): VNode {
  const title = techniqueMessages.title(messages.fields[field].label);
  return (
    <section class="technique screen-only" id="technique" aria-label={title}>
      {techniquesOf({ field, posture, people }).map((technique) => (
        <Steps key={technique} technique={technique} />
      ))}
      <button class="button" type="button" onClick={onClose}>
        {techniqueMessages.close}
      </button>
    </section>
  );
}

function Steps({ technique }: { readonly technique: Technique }): VNode {
  return (
    <div class="technique__one">
      <TechniqueFigure technique={technique} />
      <ul>
        {techniqueMessages.steps[technique].map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ul>
    </div>
  );
}
