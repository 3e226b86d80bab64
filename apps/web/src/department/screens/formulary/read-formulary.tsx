import type { Formulary } from "@steelyard/core/dosing";
import { listFormulary } from "@steelyard/formulary/ownership";
import type { VNode } from "preact";
import { useMemo, useState } from "preact/hooks";
import { FormularyText } from "../../../components/formulary-text/formulary-text.tsx";
import { TextField } from "../../components/text-field.tsx";
import { words } from "../../messages/index.ts";

/** The whole of a formulary to read, medicine by medicine, with what each line rests on. */
export function ReadFormulary({ formulary }: { readonly formulary: Formulary }): VNode {
  const { formulary: said } = words;
  const [search, setSearch] = useState("");
  const found = useMemo(() => {
    const text = search.trim().toLowerCase();
    return formulary.medicines
      .filter(({ id, name }) => name.toLowerCase().includes(text) || id.includes(text))
      .toSorted((a, b) => (a.id < b.id ? -1 : 1));
  }, [formulary, search]);
  return (
    <section class="stack" aria-labelledby="read">
      <h2 id="read">{said.read}</h2>
      <p class="soft">{said.readIntro}</p>
      <TextField label={said.find} value={search} type="search" maxLength={40} onType={setSearch} />
      {/* Folded: a hundred names would put the signatures out of sight. */}
      <details open={search.trim() !== ""}>
        <summary class="read-list__all">
          <span role="status">{found.length === 0 ? said.noMedicine : said.found(found.length)}</span>
        </summary>
        <ul class="list read-list">
          {found.map(({ id, name }) => (
            <li key={id}>
              <MedicineText formulary={formulary} id={id} name={name} />
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}

interface MedicineProps {
  readonly formulary: Formulary;
  readonly id: string;
  readonly name: string;
}

/** Written out when it is opened: all of them at once are two hundred pages. */
function MedicineText({ formulary, id, name }: MedicineProps): VNode {
  const [isOpen, setOpen] = useState(false);
  const lines = useMemo(() => (isOpen ? linesOf(formulary, id) : []), [formulary, id, isOpen]);
  return (
    <details
      class="read-list__medicine"
      onToggle={({ currentTarget }) => setOpen((currentTarget as HTMLDetailsElement).open)}
    >
      <summary>
        <FormularyText>{name}</FormularyText>
      </summary>
      <div class="read-list__lines" lang="en">
        {lines.map(({ kind, text }, index) => (
          <p key={index} class={`read-list__${kind}`}>
            {text}
          </p>
        ))}
      </div>
    </details>
  );
}

interface Line {
  readonly kind: "use" | "point" | "below" | "plain";
  readonly text: string;
}

/** One medicine of the document that reviewers sign, without the marks of its Markdown. */
export function linesOf(formulary: Formulary, id: string): readonly Line[] {
  const text = listFormulary(formulary, { medicineIds: [id] });
  const from = text.lastIndexOf("\n## ", text.indexOf(`Id \`${id}\``));
  const to = text.indexOf("\n## Sources");
  return text
    .slice(from + 1, to)
    .split("\n")
    .slice(1)
    .filter((line) => line.trim() !== "")
    .map((line): Line => {
      if (line.startsWith("### ")) return { kind: "use", text: plain(line.slice(4)) };
      if (line.startsWith("  * ")) return { kind: "below", text: plain(line.slice(4)) };
      if (line.startsWith("* ")) return { kind: "point", text: plain(line.slice(2)) };
      return { kind: "plain", text: plain(line) };
    });
}

function plain(text: string): string {
  return text.replaceAll(/\*\*|`/g, "").replaceAll(/\*(read|memory|common practice)\*/g, "$1");
}
