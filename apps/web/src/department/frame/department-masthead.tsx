import { signedOutSchema } from "@steelyard/records/department";
import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { words } from "../messages/index.ts";
import { useAct, useDepartment } from "../state/department-context.ts";
import { type DepartmentScreenId, hashOf, screensFor } from "../state/department-screens.ts";

const menuId = "screens";

interface Props {
  readonly name: string;
  readonly screen: DepartmentScreenId | undefined;
}

/** The name of the tool, the screens of this person, who is signed in and the way out. A menu on a phone, a row on a desk. */
export function DepartmentMasthead({ name, screen }: Props): VNode {
  const { state, send } = useDepartment();
  const { act, isBusy } = useAct();
  const { session } = state;
  const person = session.state === "signed-in" && !session.isOver ? session.person : undefined;
  return (
    <header class="masthead department__masthead">
      <h1>
        <svg class="masthead__sign" viewBox="0 0 32 24" aria-hidden="true">
          <path d="M2 8h28M7 8v-4M15 8v-4M23 8v-4M27 8v-4" />
          <path class="masthead__knife" d="M11 9l5 12H6z" />
        </svg>
        <span class="masthead__tool">{messages.name}</span>{" "}
        <span id="screen-name" class="department__name">
          {name}
        </span>
      </h1>
      {person !== undefined && (
        <>
          <button class="masthead__menu screen-only" type="button" popovertarget={menuId}>
            {words.menu}
          </button>
          <nav id={menuId} class="menu screen-only" popover="auto" aria-label={messages.menuName}>
            <ul>
              {screensFor(person.roles).map((id) => (
                <li key={id}>
                  <a
                    href={hashOf(id)}
                    aria-current={id === screen ? "page" : undefined}
                    onClick={(event) => {
                      const menu = event.currentTarget.closest<HTMLElement>("[popover]");
                      if (menu?.matches(":popover-open")) menu.hidePopover();
                    }}
                  >
                    {words.screens[id]}
                    <span>{words.screenFor[id]}</span>
                  </a>
                </li>
              ))}
            </ul>
          </nav>
          <div class="masthead__actions screen-only">
            <button
              class="button"
              type="button"
              aria-disabled={isBusy}
              onClick={() =>
                act({ path: "session/end", body: {}, schema: signedOutSchema }, (answer) =>
                  send({ type: "session-told", session: answer }),
                )
              }
            >
              {words.signOut}
            </button>
          </div>
          <p class="department__person">
            {words.signedIn({
              person: person.name,
              roles: person.roles.map((role) => words.roles[role]).join(", "),
              siteName: person.site,
            })}
          </p>
        </>
      )}
    </header>
  );
}
