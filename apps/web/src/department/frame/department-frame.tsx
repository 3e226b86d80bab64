import type { ComponentChildren, VNode } from "preact";
import { DraftBanner } from "../../components/draft-banner/draft-banner.tsx";
import { LanguageNote } from "../../components/language/language-note.tsx";
import type { DepartmentScreenId } from "../state/department-screens.ts";
import { DepartmentFoot } from "./department-foot.tsx";
import { DepartmentMasthead } from "./department-masthead.tsx";

interface Props {
  /** The name of what is shown. */
  readonly name: string;
  readonly screen: DepartmentScreenId | undefined;
  readonly children: ComponentChildren;
}

/** The id of the part that takes the focus when the reader comes to another screen. */
export const mainId = "main";

/** What stands around every screen, as on Bedside: the banner, the name and the menu, the cautions and what runs here. */
export function DepartmentFrame({ name, screen, children }: Props): VNode {
  return (
    <>
      <LanguageNote />
      <DraftBanner />
      <div class="frame department">
        <DepartmentMasthead name={name} screen={screen} />
        <main id={mainId} class="frame__main" tabIndex={-1} aria-labelledby="screen-name">
          {children}
        </main>
        <DepartmentFoot />
      </div>
    </>
  );
}
