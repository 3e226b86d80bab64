import type { ComponentChildren, VNode } from "preact";
import { language } from "../../messages/language.ts";

/** The language of the draft formulary; a site's own is the site's matter. */
const formularyTag = "en";

/** Words of the formulary, which keep its language: marked as such wherever the page has another one. */
export function FormularyText({ children }: { readonly children: ComponentChildren }): VNode {
  if (language === undefined || language.tag === formularyTag) return <>{children}</>;
  return <span lang={formularyTag}>{children}</span>;
}
