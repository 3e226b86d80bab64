import { type Drawing, renderSvg } from "@steelyard/paper";
import type { VNode } from "preact";
import { useMemo, useState } from "preact/hooks";
import { paperMessages } from "../../messages/paper.ts";

/** The pages of a drawing one by one, from the same list that the PDF is made of. */
export function Preview({ drawing }: { readonly drawing: Drawing }): VNode {
  const [wanted, setWanted] = useState(0);
  const { pages, title } = drawing;
  const index = Math.min(wanted, pages.length - 1);
  const page = pages[index];
  const svg = useMemo(
    () => (page === undefined ? "" : renderSvg(page, { title: `${title}, ${page.label}` })),
    [page, title],
  );
  return (
    <section class="paper__preview" aria-label={paperMessages.preview(index + 1, pages.length)}>
      <div class="paper__turn">
        <button class="button" type="button" disabled={index === 0} onClick={() => setWanted(index - 1)}>
          {paperMessages.previousPage}
        </button>
        <p aria-live="polite">{paperMessages.preview(index + 1, pages.length)}</p>
        <button
          class="button"
          type="button"
          disabled={index === pages.length - 1}
          onClick={() => setWanted(index + 1)}
        >
          {paperMessages.nextPage}
        </button>
      </div>
      {/* Made by renderSvg from our own drawing, every text in it escaped. */}
      <div class="paper__sheet" dangerouslySetInnerHTML={{ __html: svg }} />
    </section>
  );
}
