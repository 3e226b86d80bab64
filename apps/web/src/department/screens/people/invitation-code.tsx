import type { VNode } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { writeTime } from "../../components/write-time.ts";
import { words } from "../../messages/index.ts";

interface Props {
  readonly name: string;
  readonly code: string;
  readonly expiresAt: string;
  readonly onHide: () => void;
}

/** A code that is shown this once. */
export function InvitationCode({ name, code, expiresAt, onHide }: Props): VNode {
  const { people: said } = words;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), [code]);
  return (
    <section class="once" aria-labelledby="once">
      <h2 id="once" ref={heading} tabIndex={-1}>
        {said.invited(name)}
      </h2>
      <p>{said.codeOnce}</p>
      <p class="once__code" data-code>
        {code}
      </p>
      <p>
        {said.where(`${location.host}/department`)} {said.validUntil(writeTime(expiresAt))}
      </p>
      <p>
        <button class="button" type="button" onClick={onHide}>
          {said.close}
        </button>
      </p>
    </section>
  );
}
