export { acceptPush, type Sender } from "./accept-push.ts";
export { answerDocuments } from "./answer-documents.ts";
export { answerPull } from "./answer-pull.ts";
