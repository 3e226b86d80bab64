import type { FunctionComponent, VNode } from "preact";
import { Account } from "../screens/account/account.tsx";
import { Accuracy } from "../screens/accuracy/accuracy.tsx";
import { Audit } from "../screens/audit/audit.tsx";
import { Calibration } from "../screens/calibration/calibration.tsx";
import { Cases } from "../screens/casebook/cases.tsx";
import { Export } from "../screens/export/export.tsx";
import { FormularyScreen } from "../screens/formulary/formulary.tsx";
import { Devices } from "../screens/people/devices.tsx";
import { People } from "../screens/people/people.tsx";
import type { DepartmentScreenId } from "../state/department-screens.ts";
import type { ScreenProps } from "./screen-props.ts";

const screens: Readonly<Record<DepartmentScreenId, FunctionComponent<ScreenProps>>> = {
  cases: Cases,
  accuracy: Accuracy,
  formulary: FormularyScreen,
  calibration: Calibration,
  export: Export,
  people: People,
  devices: Devices,
  audit: Audit,
  account: Account,
};

/** The screen of this name. */
export function ScreenOf({ screen, ...props }: ScreenProps & { readonly screen: DepartmentScreenId }): VNode {
  const Chosen = screens[screen];
  return <Chosen {...props} />;
}
