export { en as messages } from "./en.ts";
