import {
  ageParts,
  type Band,
  bandAt,
  type ChildSize,
  COMMON_PRACTICE,
  cite,
  type LookupValue,
  type LookupWarning,
  measurableMl,
  NEWBORN_MONTHS,
} from "../lookup/index.ts";
import type { SignLine } from "./sign-line.ts";
import { signGap, signLine } from "./value-line.ts";

/** Blood, mL per kg; preterm 90 to 100. @source common-practice */
const BLOOD: readonly Band<LookupValue>[] = [
  { low: 0, high: NEWBORN_MONTHS, value: { low: 80, high: 90 } },
  { low: NEWBORN_MONTHS, high: 12, value: { low: 75, high: 80 } },
  { low: 12, value: { low: 70, high: 75 } },
];

/** The least urine that is normal, mL per kg and hour. @source common-practice */
const URINE: readonly Band<LookupValue>[] = [
  { low: 0, high: 12, value: 2 },
  { low: 12, value: 1 },
];

/** The trade calls weights that differ by more than this discordant. @source common-practice */
const DISCORDANT = 1.2;

/**
 * Circulating blood volume in mL and least urine output in mL/h, on the lighter of total and ideal weight: fat holds
 * little blood, and a volume taken too high hides a loss.
 */
export function volumes(child: ChildSize): readonly SignLine[] {
  return [perKgLine(child, "blood-volume", BLOOD), perKgLine(child, "urine-output", URINE)];
}

function perKgLine(
  child: ChildSize,
  sign: "blood-volume" | "urine-output",
  bands: readonly Band<LookupValue>[],
): SignLine {
  const { age, totalKg, idealKg } = child;
  const band = age && bandAt(bands, "age", age.ageMonths);
  if (age === undefined || band === undefined) {
    return signGap({ sign }, { type: "needs", oneOf: ["age", "length"] }, [COMMON_PRACTICE]);
  }
  const onIdeal = idealKg !== undefined && idealKg < totalKg;
  const by = onIdeal ? "ideal-weight" : "total-weight";
  const kg = onIdeal ? idealKg : totalKg;
  const unit = sign === "blood-volume" ? "mL" : "mL/h";
  const { value: perKg } = band;
  const value =
    typeof perKg === "number"
      ? measurableMl(perKg * kg)
      : { low: measurableMl(perKg.low * kg), high: measurableMl(perKg.high * kg) };
  const { rests, working } = ageParts(age);
  const warnings: readonly LookupWarning[] =
    onIdeal && totalKg > DISCORDANT * idealKg ? [{ type: "lighter-weight-used", totalKg, idealKg }] : [];
  return signLine(
    { sign },
    child,
    [
      {
        value,
        unit,
        rests: [...rests, by],
        working: [...working, band.step, { step: "per-kg", perKg, by, kg, result: value, unit }],
        sources: cite([COMMON_PRACTICE]),
      },
    ],
    { warnings },
  );
}
