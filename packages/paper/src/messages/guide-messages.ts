import type { Technique } from "../drawings/technique-drawings.ts";

/** The words of the measuring guide. */
export interface GuideMessages {
  readonly title: string;
  readonly subtitle: string;
  readonly techniques: Readonly<Record<Technique, { readonly title: string; readonly text: string }>>;
}
