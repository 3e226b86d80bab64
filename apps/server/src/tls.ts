import { readFileSync } from "node:fs";
import type { Server } from "node:tls";
import type { Settings } from "@steelyard/records/settings";

export interface Certificate {
  readonly cert: string;
  readonly key: string;
}

/** Throws where a file cannot be read. */
export function readCertificate({ certificateFile, keyFile }: NonNullable<Settings["tls"]>): Certificate {
  return { cert: readFileSync(certificateFile, "utf8"), key: readFileSync(keyFile, "utf8") };
}

interface Log {
  readonly info: (text: string) => void;
  readonly error: (what: object, text: string) => void;
}

/**
 * Takes up a renewed certificate for the connections that come from now on. One that cannot be used is said in the log,
 * and the old one stays: a renewal that went wrong shuts nobody out.
 */
export function renewCertificate(
  server: Pick<Server, "setSecureContext">,
  tls: NonNullable<Settings["tls"]>,
  log: Log,
): void {
  try {
    server.setSecureContext({ ...readCertificate(tls) });
    log.info("The certificate was read again");
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    log.error({ code }, "The new certificate cannot be used; the old one stays");
  }
}
