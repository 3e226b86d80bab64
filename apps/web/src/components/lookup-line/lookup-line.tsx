import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { sheetMessages } from "../../messages/sheet.ts";
import type { LookupFace } from "./lookup-face.ts";

interface Props {
  readonly face: LookupFace;
  readonly printing: boolean;
}

/** One item or sign: the size at a glance, its rule and sources behind it when opened. */
export function LookupLine({ face, printing }: Props): VNode {
  const [isOpen, setOpen] = useState(false);
  const { id, name, value, under, loud } = face;
  return (
    <details class="lookup-line" data-line={id} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span class="dose-line__medicine">
          <b>{name}</b>
        </span>
        <span class="dose-line__draw">
          {value === undefined ? <b class="dose-line__none">{sheetMessages.lookup.none}</b> : <b>{value}</b>}
        </span>
        <span class="dose-line__dose">{under.join("; ")}</span>
        {loud.map((sentence) => (
          <span key={sentence} class="dose-line__flag">
            {sentence}
          </span>
        ))}
      </summary>
      {(isOpen || printing) && <LookupDetail face={face} />}
    </details>
  );
}

function LookupDetail({ face }: { readonly face: LookupFace }): VNode {
  const { working, centiles, others, notes, sources } = face;
  return (
    <div class="dose-detail">
      <List title={sheetMessages.working} items={working} />
      <List title={sheetMessages.lookup.centiles} items={centiles} />
      <List title={sheetMessages.lookup.others} items={others} />
      <List title={sheetMessages.notes} items={notes} />
      <List
        title={sheetMessages.sources}
        items={sources.map(({ title, locator, verification }) =>
          sheetMessages.lookup.source(
            locator === undefined ? title : `${title}, ${locator}`,
            sheetMessages.verification[verification],
          ),
        )}
      />
    </div>
  );
}

function List({ title, items }: { readonly title: string; readonly items: readonly string[] }): VNode | null {
  if (items.length === 0) return null;
  return (
    <section>
      <h4>{title}</h4>
      <ul>
        {items.map((item) => (
          <li key={item}>{item}</li>
        ))}
      </ul>
    </section>
  );
}
