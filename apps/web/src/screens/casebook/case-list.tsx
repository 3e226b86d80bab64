import { formatNumber } from "@steelyard/core/units";
import type { CaseRecord } from "@steelyard/records/case";
import type { VNode } from "preact";
import { writeDay, writeTimeOfDay } from "../../components/case-log/clock.ts";
import { writeQuantity } from "../../components/quantity/quantity.tsx";
import { cases } from "../../messages/cases.ts";
import { language } from "../../messages/language.ts";
import { percentOff } from "../../state/casebook.ts";
import { addressOf } from "../../state/screens.ts";

/** A line for each case, the latest first. */
export function CaseList({ records }: { readonly records: readonly CaseRecord[] }): VNode {
  const words = cases.casebook;
  return (
    <ul class="case-list">
      {records.map((record) => {
        const { caseId, code, startedAt, closedAt, doses, estimate } = record;
        return (
          <li key={caseId}>
            <a href={addressOf({ screen: "casebook", path: caseId })}>
              <b class="case-list__code">{code}</b>
              <span class="case-list__when">
                {writeDay(startedAt)} {writeTimeOfDay(startedAt)}
              </span>
              {closedAt === undefined && <span class="case-list__running">{words.running}</span>}
              <span class="case-list__facts">
                {[
                  estimate &&
                    words.estimated(
                      writeQuantity({ kg: estimate.estimate.totalKg }),
                      writeQuantity({ kg: estimate.estimate.low95Kg }),
                      writeQuantity({ kg: estimate.estimate.high95Kg }),
                    ),
                  doses.length > 0 && words.doses(doses.length),
                  weighedWords(record),
                ]
                  .filter((part) => typeof part === "string")
                  .join(" · ")}
              </span>
            </a>
          </li>
        );
      })}
    </ul>
  );
}

/** The scale's word and how far the estimate was from it. */
export function weighedWords(record: CaseRecord): string {
  const words = cases.casebook;
  const { laterWeight } = record;
  if (laterWeight === undefined) return words.notWeighed;
  const off = percentOff(record);
  const weighed = words.weighed(writeQuantity({ kg: laterWeight.kg }), laterWeight.on);
  return off === undefined ? weighed : `${weighed}, ${words.off(writePercent(off))}`;
}

function writePercent(value: number): string {
  const tenths = Math.round(value * 10) / 10;
  return `${tenths > 0 ? "+" : ""}${formatNumber(tenths, language?.numbers)}\u00a0%`;
}
