import { useEffect, useState } from "preact/hooks";
import type { CaseDesk, DeskState } from "../../state/case-desk.ts";
import { caseDesk } from "./open-case-desk.ts";

/** The desk of this tab and what it knows just now. */
export function useCaseDesk(): { readonly desk: CaseDesk; readonly state: DeskState } {
  const desk = caseDesk();
  const [state, setState] = useState(desk.state());
  useEffect(() => {
    const look = (): void => setState(desk.state());
    look();
    return desk.subscribe(look);
  }, [desk]);
  return { desk, state };
}
