import { draftFormulary } from "@steelyard/formulary";
import { compareFormularies, describeDifference, signaturesNeeded } from "@steelyard/formulary/ownership";
import type { VNode } from "preact";
import { useMemo, useState } from "preact/hooks";
import { FormularyTag, FormularyText } from "../../components/formulary-text/formulary-text.tsx";
import { watchDay } from "../../effects/watch-day.ts";
import { siteMessages } from "../../messages/site.ts";
import type { OwnFormulary } from "../../state/site-rules.ts";

/** How many differences are shown: whoever reviews a formulary has the command, which lists them all. */
const shown = 100;

/** Who answers for a formulary of the site, where it comes from, and how it differs from the draft. */
export function FormularyFacts({ own }: { readonly own: OwnFormulary }): VNode {
  const words = siteMessages.formulary;
  const [now] = useState(today);
  const { formulary, fingerprint, from, signers } = own;
  const uses = formulary.medicines.reduce((sum, medicine) => sum + medicine.uses.length, 0);
  const highAlert = signaturesNeeded({ formulary }).because.length;
  const rows: readonly (readonly [string, string])[] = [
    [words.facts.version, formulary.version],
    [words.facts.title, formulary.title],
    [words.facts.signed, words.signedBy(signers)],
    [words.facts.fingerprint, fingerprint],
    [words.facts.from, from === "file" ? words.fromFile : words.fromDepartment],
    [words.facts.holds, words.holds(uses, formulary.medicines.length)],
  ];
  return (
    <>
      {signers.length === 0 && <p class="site__unsigned">{words.unsigned}</p>}
      {signers.length === 1 && highAlert > 0 && <p class="site__unsigned">{words.oneSigner(highAlert)}</p>}
      {signers.some(({ date }) => isYearAgo(date, now)) && <p class="site__unsigned">{words.old}</p>}
      <dl class="site__facts">
        {rows.map(([term, value]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <Differences key={fingerprint} own={own} />
    </>
  );
}

/** Worked out when it is asked for: two whole formularies are compared. */
function Differences({ own: { formulary } }: { readonly own: OwnFormulary }): VNode {
  const words = siteMessages.formulary;
  const [isOpen, setOpen] = useState(false);
  const differences = useMemo(
    () => (isOpen ? compareFormularies(draftFormulary, formulary).map(describeDifference) : []),
    [isOpen, formulary],
  );
  return (
    <details class="site__differences" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{words.differsNow}</summary>
      {isOpen && <p>{words.differs(differences.length)}</p>}
      <ul>
        {differences.slice(0, shown).map((difference) => (
          <li key={difference}>
            {/* The sentence is English, whatever the words of the formulary. */}
            <FormularyTag.Provider value="en">
              <FormularyText>{difference}</FormularyText>
            </FormularyTag.Provider>
          </li>
        ))}
      </ul>
      {differences.length > shown && <p>{words.moreDifferences(differences.length - shown)}</p>}
    </details>
  );
}

/** Sites review what they sign yearly (common practice). */
function isYearAgo(day: string, now: string): boolean {
  const [year = "", ...rest] = day.split("-");
  return `${Number(year) + 1}-${rest.join("-")}` <= now;
}

function today(): string {
  let day = "";
  watchDay((own) => {
    day = own;
  });
  return day;
}
