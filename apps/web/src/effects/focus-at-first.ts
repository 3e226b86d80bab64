import type { RefObject } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";

/** Takes the focus when the element appears: what had it has just gone, and whoever uses keys or a screen reader reads on here. */
export function useFocusAtFirst<Kind extends HTMLElement>(): RefObject<Kind | null> {
  const element = useRef<Kind>(null);
  useLayoutEffect(() => element.current?.focus({ preventScroll: true }), []);
  return element;
}
