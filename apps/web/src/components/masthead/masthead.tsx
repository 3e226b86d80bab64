import type { ComponentChildren, VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { addressOf, type ScreenId, screenIds } from "../../state/screens.ts";

interface Props {
  readonly screen: ScreenId;
  readonly actions?: ComponentChildren;
}

const menuId = "screens";

/** The name of the tool, the screen one is on with the way to the others, and what can be done here. */
export function Masthead({ screen, actions }: Props): VNode {
  const name = messages.screens[screen];
  return (
    <header class="masthead">
      <h1>
        <svg class="masthead__sign" viewBox="0 0 32 24" aria-hidden="true">
          <path d="M2 8h28M7 8v-4M15 8v-4M23 8v-4M27 8v-4" />
          <path class="masthead__knife" d="M11 9l5 12H6z" />
        </svg>
        <span class="masthead__tool">{messages.name}</span>{" "}
        <span id="screen-name" class={screenIds.length > 1 ? "unseen" : undefined}>
          {name}
        </span>
      </h1>
      {screenIds.length > 1 && (
        <>
          <button
            class="masthead__menu screen-only"
            type="button"
            popovertarget={menuId}
            aria-label={messages.menu(name)}
          >
            {name}
          </button>
          <nav id={menuId} class="menu screen-only" popover="auto" aria-label={messages.menuName}>
            <ul>
              {screenIds.map((id) => (
                <li key={id}>
                  <a
                    href={addressOf({ screen: id, path: "" })}
                    aria-current={id === screen ? "page" : undefined}
                    onClick={(event) => event.currentTarget.closest<HTMLElement>("[popover]")?.hidePopover()}
                  >
                    {messages.screens[id]}
                    <span>{messages.screenFor[id]}</span>
                  </a>
                </li>
              ))}
            </ul>
          </nav>
        </>
      )}
      <div class="masthead__actions screen-only">{actions}</div>
    </header>
  );
}
