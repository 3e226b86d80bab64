export { readSettings, type SettingsFault, settingVariables } from "./read-settings.ts";
export type { Settings } from "./settings-schema.ts";
