export { type DocumentNeeds, documentNeeds } from "./document-needs.ts";
export { type DocumentToRead, type ReadDocument, readDocument } from "./read-document.ts";
export { signedContent } from "./signed-content.ts";
