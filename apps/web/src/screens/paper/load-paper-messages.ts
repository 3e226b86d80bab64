import { ENGLISH_PAPER, type PaperMessages } from "@steelyard/paper";
import type { PaperLanguage } from "./paper-choices.ts";

/** The words of a paper; those of another language are fetched when somebody asks for them. */
export async function loadPaperMessages(language: PaperLanguage): Promise<PaperMessages> {
  return language === "en" ? ENGLISH_PAPER : (await import("@steelyard/paper/french")).FRENCH_PAPER;
}
