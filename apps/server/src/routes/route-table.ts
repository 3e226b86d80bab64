import { auditRoute, verifyAuditRoute } from "./audit-routes.ts";
import { fitCalibrationRoute } from "./calibration-routes.ts";
import { accuracyRoute, caseEventRoute, caseRoute, casesRoute } from "./casebook-routes.ts";
import { devicesRoute, enrolDeviceRoute, revokeDeviceRoute } from "./device-routes.ts";
import {
  addDocumentRoute,
  documentRoute,
  documentsRoute,
  publishDocumentRoute,
  signDocumentRoute,
} from "./document-routes.ts";
import { exportRoute } from "./export-routes.ts";
import { linkRoute, putLinkRoute } from "./link-routes.ts";
import { healthRoute, metricsRoute, readyRoute } from "./operation-routes.ts";
import { endOwnSessionsRoute, ownSessionsRoute } from "./own-session-routes.ts";
import {
  addPasskeyRoute,
  beginPasskeyRoute,
  beginPasskeySignInRoute,
  passkeySignInRoute,
  passkeysRoute,
  removePasskeyRoute,
} from "./passkey-routes.ts";
import { changePersonRoute, inviteRoute, peopleRoute } from "./people-routes.ts";
import type { Route } from "./route.ts";
import {
  joinRoute,
  passwordRoute,
  sessionRoute,
  setUpRoute,
  signInRoute,
  signOutRoute,
} from "./session-routes.ts";
import { pullRoute, pushRoute, syncDocumentsRoute } from "./sync-routes.ts";

/** Every way into the records. A route that is not here does not exist. */
export const routeTable: readonly Route[] = [
  healthRoute,
  readyRoute,
  metricsRoute,
  pushRoute,
  pullRoute,
  sessionRoute,
  setUpRoute,
  signInRoute,
  joinRoute,
  signOutRoute,
  passwordRoute,
  ownSessionsRoute,
  endOwnSessionsRoute,
  passkeysRoute,
  beginPasskeyRoute,
  addPasskeyRoute,
  removePasskeyRoute,
  beginPasskeySignInRoute,
  passkeySignInRoute,
  peopleRoute,
  inviteRoute,
  changePersonRoute,
  devicesRoute,
  enrolDeviceRoute,
  revokeDeviceRoute,
  casesRoute,
  caseRoute,
  caseEventRoute,
  linkRoute,
  putLinkRoute,
  accuracyRoute,
  exportRoute,
  fitCalibrationRoute,
  documentsRoute,
  documentRoute,
  addDocumentRoute,
  signDocumentRoute,
  publishDocumentRoute,
  syncDocumentsRoute,
  auditRoute,
  verifyAuditRoute,
];
