import { createEvents } from "./0001-events.ts";
import { createAudit } from "./0002-audit.ts";
import { createDocuments } from "./0003-documents.ts";
import { createPeople } from "./0004-people.ts";
import { createSignatures } from "./0005-signatures.ts";
import { createCaseSummary } from "./0006-case-summary.ts";
import { createSealedLink } from "./0007-sealed-link.ts";
import type { MigrationStep } from "./migration-context.ts";

/** In order, by the name under which the database remembers them. Released steps are never edited; new ones are added below. */
export const migrationSteps: Readonly<Record<string, MigrationStep>> = {
  "0001-events": createEvents,
  "0002-audit": createAudit,
  "0003-documents": createDocuments,
  "0004-people": createPeople,
  "0005-signatures": createSignatures,
  "0006-case-summary": createCaseSummary,
  "0007-sealed-link": createSealedLink,
};
