/** The option that `child` and `weigh` share. */
export const SITE_OPTION = {
  flags: "--site <site.json>",
  help: "the calibration of your site, made by steelyard calibrate",
} as const;
