import type { VNode } from "preact";
import { useFocusAtFirst } from "../../effects/focus-at-first.ts";

/** The heading of the next stage; it takes the focus from the button that led there. */
export function StageHeading({ words }: { readonly words: string }): VNode {
  const heading = useFocusAtFirst<HTMLHeadingElement>();
  return (
    <h2 ref={heading} tabIndex={-1}>
      {words}
    </h2>
  );
}
