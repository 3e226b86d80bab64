export { acceptPush, type Sender } from "./accept-push.ts";
export { answerPull } from "./answer-pull.ts";
