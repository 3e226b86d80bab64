import type { ComponentChildren, VNode } from "preact";

interface Props {
  readonly id: string;
  readonly name: string;
  /** How much is in it, in words. */
  readonly count?: string;
  readonly isOpen: boolean;
  readonly printing: boolean;
  /** Absent while it can only be open. */
  readonly onTurn: (() => void) | undefined;
  /** Made only while it is shown. */
  readonly children: () => ComponentChildren;
}

/** A heading that opens to what is under it. */
export function FoldingGroup({ id, name, count, isOpen, printing, onTurn, children }: Props): VNode {
  const bodyId = `${id}-lines`;
  const isShown = isOpen || printing;
  return (
    <section class="problem-group">
      <h3 id={id}>
        {onTurn === undefined ? (
          <span class="problem-group__head">{name}</span>
        ) : (
          <button
            class="problem-group__head problem-group__head--turns"
            type="button"
            aria-expanded={isOpen}
            aria-controls={bodyId}
            onClick={onTurn}
          >
            {name} <span class="problem-group__count">{count}</span>
          </button>
        )}
      </h3>
      <div id={bodyId} hidden={!isShown}>
        {isShown && children()}
      </div>
    </section>
  );
}
