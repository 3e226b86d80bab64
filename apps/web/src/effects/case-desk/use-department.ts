import { useEffect, useState } from "preact/hooks";
import type { DepartmentState } from "../../state/department.ts";
import type { Department } from "./department.ts";
import { department } from "./open-case-desk.ts";

/** The exchange with the department's server, and how it stands just now. */
export function useDepartment(): { readonly department: Department; readonly state: DepartmentState } {
  const own = department();
  const [state, setState] = useState(own.state());
  useEffect(() => {
    const look = (): void => setState(own.state());
    look();
    return own.subscribe(look);
  }, [own]);
  return { department: own, state };
}
