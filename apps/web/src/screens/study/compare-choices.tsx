import type { VNode } from "preact";
import { study as messages } from "../../messages/study.ts";
import type { ComparedAs, ShownStudy } from "./study-job.ts";

const MOST_SEED = 4294967295;

interface Props {
  readonly shown: ShownStudy;
  /** Ids of the methods that are chosen. */
  readonly methods: readonly string[];
  readonly compared: ComparedAs;
  readonly onChange: (next: Partial<ComparedAs>) => void;
}

/** With which method the others are compared, by what margin, what is drawn together and from which seed, and whether doses are judged. */
export function CompareChoices({ shown, methods, compared, onChange }: Props): VNode {
  const chosen = shown.methods.filter(({ id }) => methods.includes(id));
  return (
    <div class="study__compare">
      <label class="study__site">
        {messages.reference}
        <select
          value={compared.reference || chosen[0]?.id}
          onChange={({ currentTarget }) => onChange({ reference: currentTarget.value })}
        >
          {chosen.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label class="study__site">
        {messages.margin}
        <input
          type="number"
          min={0}
          max={99}
          step={0.1}
          value={compared.marginPoints}
          onInput={({ currentTarget }) => onChange({ marginPoints: currentTarget.valueAsNumber || 0 })}
        />
      </label>
      <label class="study__site">
        {messages.clusters}
        <select
          value={compared.clusters}
          onChange={({ currentTarget }) => onChange({ clusters: currentTarget.value })}
        >
          <option value="">{messages.usualClusters}</option>
          {shown.clusters.map((name) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label class="study__site">
        {messages.seed}
        <input
          type="number"
          min={0}
          max={MOST_SEED}
          step={1}
          value={compared.seed}
          onInput={({ currentTarget }) => onChange({ seed: seedOf(currentTarget.valueAsNumber) })}
        />
      </label>
      <label class="study__option">
        <input
          type="checkbox"
          checked={compared.doses}
          onChange={({ currentTarget }) => onChange({ doses: currentTarget.checked })}
        />
        {messages.doses}
      </label>
    </div>
  );
}

/** The nearest seed there is; 0 for what is no number. */
function seedOf(value: number): number {
  return Math.max(0, Math.min(MOST_SEED, Math.floor(value) || 0));
}
