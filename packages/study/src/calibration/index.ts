export { fingerprintText } from "./fingerprint-text.ts";
export { weighedChildren } from "./weighed-children.ts";
