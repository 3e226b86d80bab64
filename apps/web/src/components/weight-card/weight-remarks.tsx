import type { EstimatedChild } from "@steelyard/core/body";
import { describeBodyWarning, describeRests } from "@steelyard/core/wording";
import type { VNode } from "preact";
import { language } from "../../messages/language.ts";

interface Props {
  readonly child: EstimatedChild | undefined;
  /** Why there is no weight, where the measurements together are the reason. */
  readonly refusal: string | undefined;
}

/** What the weight rests on, and what its reader must know. */
export function WeightRemarks({ child, refusal }: Props): VNode {
  return (
    <div class="weight-remarks">
      {refusal !== undefined && <p class="weight-remarks__warning">{refusal}</p>}
      {child !== undefined && <p>{describeRests(child.estimate.rests, language?.messages)}</p>}
      {child?.estimate.warnings.map((warning) => {
        const sentence = describeBodyWarning(warning, language?.messages);
        return (
          <p key={sentence} class="weight-remarks__warning">
            {sentence}
          </p>
        );
      })}
    </div>
  );
}
