import type { VNode } from "preact";
import { words } from "../../messages/index.ts";
import { hashOf } from "../../state/department-screens.ts";
import { Differences } from "./beside.tsx";
import { WithFormulary } from "./with-formulary.tsx";

/** Any two versions beside each other. */
export function CompareFormularies({ from, to }: { readonly from: string; readonly to: string }): VNode {
  const { formulary, documents } = words;
  return (
    <div class="stack wide">
      <p class="screen-only">
        <a class="case-page__back" href={hashOf("formulary")}>
          {documents.all}
        </a>
      </p>
      <WithFormulary sha256={from}>
        {(before) => (
          <WithFormulary sha256={to}>
            {(after) => (
              <>
                <h2>{formulary.compareHead(before.label, after.label)}</h2>
                <Differences before={before.formulary} after={after.formulary} />
              </>
            )}
          </WithFormulary>
        )}
      </WithFormulary>
    </div>
  );
}
