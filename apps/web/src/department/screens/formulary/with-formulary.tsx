import type { Formulary } from "@steelyard/core/dosing";
import { draftFormulary, validateFormulary } from "@steelyard/formulary";
import { readFormularyText } from "@steelyard/formulary/ownership";
import { type DocumentEntry, wholeDocumentSchema } from "@steelyard/records/department";
import type { ComponentChildren, VNode } from "preact";
import { useMemo } from "preact/hooks";
import { Answer } from "../../components/answer.tsx";
import { words } from "../../messages/index.ts";
import { useAnswer } from "../../state/department-context.ts";

/** What stands in an address for the draft that came with the software. */
export const draftName = "draft";
export const draftVersion: string = draftFormulary.version;

/** A version with its formulary; the draft of the software has no entry at the server. */
interface ReadFormulary {
  readonly formulary: Formulary;
  readonly label: string;
  readonly document?: DocumentEntry;
  readonly content?: string;
}

interface Props {
  readonly sha256: string;
  readonly children: (read: ReadFormulary) => ComponentChildren;
}

/** Fetches a version and reads it as a file would be read, with every check. */
export function WithFormulary({ sha256, children }: Props): VNode {
  if (sha256 === draftName)
    return (
      <>
        {children({ formulary: draftFormulary, label: words.formulary.draftLabel(draftFormulary.version) })}
      </>
    );
  return <Fetched sha256={sha256}>{children}</Fetched>;
}

function Fetched({ sha256, children }: Props): VNode {
  const answer = useAnswer({ path: "document", query: { sha256 }, schema: wholeDocumentSchema });
  const content = answer.state === "ready" ? answer.value.content : undefined;
  const formulary = useMemo(() => (content === undefined ? undefined : formularyFrom(content)), [content]);
  return (
    <Answer answer={answer}>
      {({ document }) =>
        formulary === undefined || content === undefined ? (
          <p role="alert" class="note note--warn">
            {words.documents.unreadable}
          </p>
        ) : (
          children({ formulary, label: document.label, document, content })
        )
      }
    </Answer>
  );
}

/** The formulary in a text; undefined where it is none that this page can vouch for. */
function formularyFrom(text: string): Formulary | undefined {
  const data = readFormularyText(text);
  if (!data.ok) return undefined;
  const read = validateFormulary(data.value);
  return read.ok ? read.value : undefined;
}
