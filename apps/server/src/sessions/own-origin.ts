import type { Settings } from "@steelyard/records/settings";
import type { FastifyRequest } from "fastify";

/** Where the page is, as its visitors see it: by the settings, or by what the browser asked for. */
export function ownOrigin({ publicUrl }: Settings, request: FastifyRequest): string {
  return publicUrl === undefined ? `${request.protocol}://${request.host}` : new URL(publicUrl).origin;
}
