import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";

/** What to do while there is nothing to show. */
export function FirstSteps(): VNode {
  const { title, steps, end } = messages.firstSteps;
  return (
    <section class="first-steps" aria-labelledby="first-steps">
      <h2 id="first-steps">{title}</h2>
      <ol>
        {steps.map((step) => (
          <li key={step.title}>
            <h3>{step.title}</h3>
            <p>{step.text}</p>
          </li>
        ))}
      </ol>
      <p class="first-steps__end">{end}</p>
    </section>
  );
}
