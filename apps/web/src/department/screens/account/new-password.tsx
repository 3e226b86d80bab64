import type { VNode } from "preact";
import { TextField } from "../../components/text-field.tsx";
import { words } from "../../messages/index.ts";
import { passwordFault } from "./account-faults.ts";

interface Props {
  readonly label: string;
  readonly password: string;
  readonly again: string;
  /** Faults are told from the first try on, not while typing. */
  readonly isTried: boolean;
  readonly onType: (change: { readonly password?: string; readonly again?: string }) => void;
}

/** A password that is new, typed twice. */
export function NewPassword({ label, password, again, isTried, onType }: Props): VNode {
  const { account } = words;
  return (
    <>
      <TextField
        label={label}
        value={password}
        type="password"
        autocomplete="new-password"
        maxLength={200}
        hint={account.passwordHint}
        fault={isTried ? passwordFault(password) : undefined}
        onType={(text) => onType({ password: text })}
      />
      <TextField
        label={account.passwordAgain}
        value={again}
        type="password"
        autocomplete="new-password"
        maxLength={200}
        fault={isTried && again !== password ? account.different : undefined}
        onType={(text) => onType({ again: text })}
      />
    </>
  );
}
