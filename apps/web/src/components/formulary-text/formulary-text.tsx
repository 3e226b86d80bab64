import { type ComponentChildren, createContext, type VNode } from "preact";
import { useContext } from "preact/hooks";
import { language } from "../../messages/language.ts";

/** The language of the formulary in use, as a tag of BCP 47; the draft has English words. */
export const FormularyTag = createContext("en");

/** Words of the formulary, which keep its language: marked as such wherever the page has another one. */
export function FormularyText({ children }: { readonly children: ComponentChildren }): VNode {
  const tag = useContext(FormularyTag);
  if (tag === (language?.tag ?? "en")) return <>{children}</>;
  return <span lang={tag}>{children}</span>;
}
