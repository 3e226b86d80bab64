import { type PersonRole, personRoles } from "@steelyard/records/department";
import type { VNode } from "preact";
import { words } from "../messages/index.ts";

interface Props {
  readonly roles: readonly PersonRole[];
  readonly fault?: string | undefined;
  readonly onChoose: (roles: readonly PersonRole[]) => void;
}

/** One or more roles, in one order. */
export function RoleChoice({ roles, fault, onChoose }: Props): VNode {
  return (
    <fieldset class="choice-field">
      <legend>{words.people.rolesLegend}</legend>
      <div class="choice-field__options">
        {personRoles.map((role) => (
          <label key={role}>
            <input
              type="checkbox"
              checked={roles.includes(role)}
              onChange={({ currentTarget }) =>
                onChoose(
                  personRoles.filter((own) => (own === role ? currentTarget.checked : roles.includes(own))),
                )
              }
            />
            <span>{words.roles[role]}</span>
          </label>
        ))}
      </div>
      {fault !== undefined && (
        <p class="text-field__fault" role="alert">
          {fault}
        </p>
      )}
    </fieldset>
  );
}
