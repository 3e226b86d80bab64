import { cautionBlock } from "@steelyard/core/wording";
import { wrap } from "./wrap.ts";

export const EXIT_STATUS_HELP = `Exit status:
  0  done
  1  a plausible input that cannot be served; the message says which value and
     which range (or a file that cannot be read or written)
  2  wrong usage: an unknown option, a text that is no number
`;

/** The safety words under every help. */
export function helpCautions(): string {
  const { title, lines } = cautionBlock();
  return `${title}:\n${wrap(lines.join(" "), { indent: "  " })}`;
}
