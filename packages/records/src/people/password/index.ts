export {
  hashPassword,
  needsRehash,
  PasswordsBusy,
  passwordCost,
  type ScryptCost,
  verifyPassword,
} from "./hash-password.ts";
export { judgePassword, normalPassword, type PasswordIssue, passwordLength } from "./judge-password.ts";
