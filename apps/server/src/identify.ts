import type { Principal } from "@steelyard/records/people";
import type { Store } from "@steelyard/records/store";

declare module "fastify" {
  interface FastifyRequest {
    principal?: Principal;
  }
}

/** Who asks, by what the request proves. A session of a person is to be looked up here too. */
export async function identify(store: Store, authorization: string | undefined): Promise<Principal> {
  const token = /^Bearer ([A-Za-z0-9_-]{32,200})$/.exec(authorization ?? "")?.[1];
  const device = token === undefined ? undefined : await store.findDevice(token);
  if (device === undefined) return { kind: "anyone" };
  return { kind: "device", id: device.id, site: device.site, roles: ["device"] };
}
