import { renderToString } from "preact-render-to-string";
import { App } from "./app.tsx";
import { noEffects } from "./effects/effects.ts";

/** The empty first screen as HTML, for the build to put into the page. */
export function firstScreen(): string {
  return renderToString(<App effects={noEffects} />);
}
