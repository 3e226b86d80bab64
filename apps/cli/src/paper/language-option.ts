import { ENGLISH_PAPER, type PaperMessages } from "@steelyard/paper";
import { FRENCH_PAPER } from "@steelyard/paper/french";
import { CommandFailure, EXIT } from "../exit-status.ts";

const known: readonly PaperMessages[] = [ENGLISH_PAPER, FRENCH_PAPER];
const tags = known.map(({ language }) => language.tag);

/** The help of --language. */
export const languageHelp: string = `language of the paper: ${tags.join(" or ")}; French is machine-translated, unreviewed, and says so on every page`;

/** The words of a language tag; a sentence with the tags there are for any other. */
export function paperMessagesOf(tag: string): PaperMessages {
  const found = known.find(({ language }) => language.tag === tag.toLowerCase());
  if (found !== undefined) return found;
  throw new CommandFailure(
    EXIT.wrongUsage,
    `There is no paper in "${tag}": use ${tags.join(" or ")}. Nothing was written.`,
  );
}
