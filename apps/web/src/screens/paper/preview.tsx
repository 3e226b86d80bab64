import type { VNode } from "preact";
import { paperMessages } from "../../messages/paper.ts";
import type { ShownPage } from "./paper-job.ts";

interface Props {
  readonly shown: ShownPage;
  readonly onTurn: (page: number) => void;
}

/** The pages of a drawing one by one, from the same list that the PDF is made of. */
export function Preview({ shown, onTurn }: Props): VNode {
  const { page, pages, svg } = shown;
  return (
    <section class="paper__preview" aria-label={paperMessages.preview(page + 1, pages)}>
      <div class="paper__turn">
        <button class="button" type="button" disabled={page === 0} onClick={() => onTurn(page - 1)}>
          {paperMessages.previousPage}
        </button>
        <p aria-live="polite">{paperMessages.preview(page + 1, pages)}</p>
        <button class="button" type="button" disabled={page === pages - 1} onClick={() => onTurn(page + 1)}>
          {paperMessages.nextPage}
        </button>
      </div>
      {/* Made by renderSvg from our own drawing, every text in it escaped. */}
      <div class="paper__sheet" dangerouslySetInnerHTML={{ __html: svg }} />
    </section>
  );
}
