import type { DocumentEntry, DocumentsAnswer } from "@steelyard/records/department";
import type { VNode } from "preact";
import { writeTime } from "../../components/write-time.ts";
import { words } from "../../messages/index.ts";
import { type DepartmentScreenId, hashOf } from "../../state/department-screens.ts";

interface Props extends DocumentsAnswer {
  readonly screen: DepartmentScreenId;
}

/** Every version, the latest first, with how it stands; then what was in force, and since when. */
export function VersionList({ documents, publications, screen }: Props): VNode {
  const { documents: said } = words;
  const labelOf = (sha256: string): string =>
    documents.find((one) => one.sha256 === sha256)?.label ?? sha256.slice(0, 12);
  const inForce = documents.find((one) => one.inForce);
  return (
    <>
      <section class="stack" aria-labelledby="versions">
        <h2 id="versions">{said.versions}</h2>
        <p class={inForce === undefined ? "note note--warn" : "note"}>
          {inForce === undefined ? said.noneInForce : said.inForceNow(inForce.label)}
        </p>
        {documents.length === 0 ? (
          <p>{said.noVersions}</p>
        ) : (
          <ul class="list">
            {documents.map((one) => (
              <li key={one.sha256} data-version={one.label}>
                <a href={hashOf(screen, one.sha256)}>
                  <b>{one.label}</b>
                </a>
                <span class="soft">{said.made({ person: one.by.name, time: writeTime(one.at) })}</span>
                <VersionTags document={one} />
              </li>
            ))}
          </ul>
        )}
      </section>
      {publications.length > 0 && (
        <section class="stack" aria-labelledby="in-force">
          <h2 id="in-force">{said.history}</h2>
          <ul class="list">
            {publications.map(({ position, sha256, at, by }) => (
              <li key={position} class="soft">
                {said.publication({ label: labelOf(sha256), person: by.name, time: writeTime(at) })}
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

/** How a version stands, in words as well as in colour. */
export function VersionTags({ document }: { readonly document: DocumentEntry }): VNode {
  const { documents: said } = words;
  const { needs, published, inForce } = document;
  const isSigned = needs.have >= needs.signatures;
  return (
    <span class="row">
      <span class={`tag ${isSigned ? "tag--good" : "tag--warn"}`}>{isSigned ? said.signed : said.draft}</span>
      {!isSigned && needs.have > 0 && <span class="tag">{said.needs(needs.have, needs.signatures)}</span>}
      {inForce && <span class="tag tag--good">{said.inForce}</span>}
      {published && !inForce && <span class="tag">{said.publishedBefore}</span>}
    </span>
  );
}
