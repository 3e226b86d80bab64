import { type Dose, formatNumber, formatQuantity, formatWeight, writtenKg } from "@steelyard/core/units";
import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { language } from "../../messages/language.ts";

type Props =
  | { readonly dose: Dose }
  /** `measured`: read from a scale, and so written as exactly as it entered the doses. */
  | { readonly kg: number; readonly measured?: boolean }
  | { readonly fromKg: number; readonly toKg: number };

/**
 * The only component that prints a dose, volume, rate, energy or weight.
 *
 * How a number is written is a safety rule, and `@steelyard/core/units` keeps it; here it only gets a box that
 * never breaks and figures of one width.
 */
export function Quantity(props: Props): VNode {
  const [number = "", ...unit] = writeQuantity(props).split("\u00a0");
  return (
    <span class="quantity">
      {number}
      <span class="quantity__unit">
        {"\u00a0"}
        {unit.join("\u00a0")}
      </span>
    </span>
  );
}

/** The same for text that is only spoken. */
export function writeQuantity(props: Props): string {
  if ("dose" in props) return formatQuantity(props.dose, language?.numbers);
  if ("kg" in props) return formatWeight(writtenKg(props.kg, props), language?.numbers);
  const from = formatNumber(writtenKg(props.fromKg), language?.numbers);
  return `${from} ${messages.to} ${formatWeight(writtenKg(props.toKg), language?.numbers)}`;
}
