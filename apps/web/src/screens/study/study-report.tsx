import type { VNode } from "preact";
import { study as messages } from "../../messages/study.ts";
import type { ShownBlock } from "./study-job.ts";

/** The report on the screen: the same blocks as in its files. Wide tables scroll in their own frame. */
export function StudyReport({
  title,
  blocks,
  onPicture,
}: {
  readonly title: string;
  readonly blocks: readonly ShownBlock[];
  /** Asked for the figure of that name as a picture. */
  readonly onPicture: (name: string) => void;
}): VNode {
  return (
    <article class="study__report" aria-label={title}>
      <h2>{title}</h2>
      {blocks.map((block, i) => (
        // Blocks have no names of their own, and a new report replaces all of them.
        <ReportBlock key={`${title}${i}`} block={block} onPicture={onPicture} />
      ))}
    </article>
  );
}

function ReportBlock({
  block,
  onPicture,
}: {
  readonly block: ShownBlock;
  readonly onPicture: (name: string) => void;
}): VNode {
  switch (block.type) {
    case "heading":
      return <h3>{block.text}</h3>;
    case "text":
      return <p>{block.text}</p>;
    case "list":
      return (
        <ul class="study__list">
          {block.items.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
      );
    case "figure":
      return (
        <figure class="study__figure">
          <figcaption>{block.caption}</figcaption>
          {/* Drawn by the report's own renderer, which escapes every text. */}
          <div dangerouslySetInnerHTML={{ __html: block.svg }} />
          <button
            class="button"
            type="button"
            aria-label={`${messages.picture}: ${block.caption}`}
            onClick={() => onPicture(block.name)}
          >
            {messages.picture}
          </button>
        </figure>
      );
    case "table": {
      const { caption, head, rows } = block.table;
      return (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls must be reached by the keyboard
        <section class="study__wide" tabIndex={0} aria-label={caption}>
          <table>
            <caption>{caption}</caption>
            <thead>
              <tr>
                {head.map((cell, i) =>
                  cell === "" ? (
                    <td key={`${i}-`} />
                  ) : (
                    <th key={`${i}-${cell}`} scope="col">
                      {cell}
                    </th>
                  ),
                )}
              </tr>
            </thead>
            <tbody>
              {rows.map(([name = "", ...cells], i) => (
                <tr key={`${i}-${name}`}>
                  <th scope="row">{name}</th>
                  {cells.map((cell, k) => (
                    <td key={`${k}-${cell}`}>{cell}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      );
    }
  }
}
