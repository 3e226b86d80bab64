export { hasRole, type Principal, type Role } from "./principal.ts";
