import { randomBytes, randomUUID } from "node:crypto";
import {
  devicesAnswerSchema,
  enrolAnswerSchema,
  enrolRequestSchema,
  revokedSchema,
  revokeRequestSchema,
} from "@steelyard/records/department";
import type { Route } from "./route.ts";
import { personOf } from "./who.ts";

export const devicesRoute: Route = {
  method: "GET",
  url: "/api/devices",
  roles: ["administrator"],
  replies: { 200: devicesAnswerSchema },
  handle: async ({ principal }, { store }) => {
    const devices = await store.listDevices(personOf(principal).site);
    return { status: 200, body: { devices: devices.map(({ site: _site, ...device }) => device) } };
  },
};

/** The token is in this answer and nowhere else. */
export const enrolDeviceRoute: Route = {
  method: "POST",
  url: "/api/devices",
  roles: ["administrator"],
  body: enrolRequestSchema,
  replies: { 200: enrolAnswerSchema },
  handle: async ({ principal, body }, { store }) => {
    const { site, actor } = personOf(principal);
    const { name } = body as { readonly name: string };
    const token = randomBytes(32).toString("base64url");
    const { id } = await store.enrolDevice({ site, actor, id: randomUUID(), name, token });
    return { status: 200, body: { id, token } };
  },
};

export const revokeDeviceRoute: Route = {
  method: "POST",
  url: "/api/devices/revoke",
  roles: ["administrator"],
  body: revokeRequestSchema,
  replies: { 200: revokedSchema },
  handle: async ({ principal, body }, { store }) => {
    const { site, actor } = personOf(principal);
    const done = await store.revokeDevice({ site, actor, id: (body as { readonly id: string }).id });
    return done
      ? { status: 200, body: { revoked: true } }
      : { status: 404, body: { problem: "unknown-device" } };
  },
};
