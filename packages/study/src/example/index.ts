export { inventStudy } from "./invent-study.ts";
