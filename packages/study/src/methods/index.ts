export { type EstimateByMethodOptions, estimateByMethod } from "./estimate-by-method.ts";
export type { BodyInput, Method, MethodEstimates } from "./method.ts";
export { BODY_INPUTS, type MethodIssue, methodId, readMethod } from "./read-method.ts";
