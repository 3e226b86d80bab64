import type { FunctionComponent, VNode } from "preact";
import { Account } from "../screens/account/account.tsx";
import { Devices } from "../screens/people/devices.tsx";
import { People } from "../screens/people/people.tsx";
import type { DepartmentScreenId } from "../state/department-screens.ts";
import type { ScreenProps } from "./screen-props.ts";

const screens: Readonly<Partial<Record<DepartmentScreenId, FunctionComponent<ScreenProps>>>> = {
  people: People,
  devices: Devices,
  account: Account,
};

/** The screen of this name. */
export function ScreenOf({
  screen,
  ...props
}: ScreenProps & { readonly screen: DepartmentScreenId }): VNode | null {
  const Chosen = screens[screen];
  return Chosen === undefined ? null : <Chosen {...props} />;
}
