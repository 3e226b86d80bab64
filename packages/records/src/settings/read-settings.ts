import { err, ok, type Result } from "@steelyard/core/result";
import * as v from "valibot";
import { type Settings, settingsSchema } from "./settings-schema.ts";

/** What is wrong, where: `listen.port` of the file, or `STEELYARD_PORT`. */
export interface SettingsFault {
  readonly where: string;
  readonly reason: string;
}

type Json = { [name: string]: unknown };

/** Each environment variable, the setting it stands in for, and how its text is read. */
const overrides: Readonly<Record<string, readonly [path: string, read: (text: string) => unknown]>> = {
  STEELYARD_HOST: ["listen.host", String],
  STEELYARD_PORT: ["listen.port", wholeNumber],
  STEELYARD_DATABASE: [
    "database",
    (text) =>
      /^postgres(ql)?:/.test(text) ? { type: "postgres", url: text } : { type: "sqlite", file: text },
  ],
  STEELYARD_SITE: ["site", String],
  STEELYARD_TLS_CERTIFICATE: ["tls.certificateFile", String],
  STEELYARD_TLS_KEY: ["tls.keyFile", String],
  STEELYARD_TRUST_PROXY: ["trustProxy", (text) => text.split(",").map((part) => part.trim())],
  STEELYARD_INSECURE_HTTP: ["insecureHttp", yesOrNo],
  STEELYARD_BODY_BYTES: ["limits.bodyBytes", wholeNumber],
  STEELYARD_REQUESTS_PER_MINUTE: ["limits.requestsPerMinute", wholeNumber],
  STEELYARD_DISK_FOLDER: ["disk.folder", String],
  STEELYARD_LEAST_FREE_BYTES: ["disk.leastFreeBytes", wholeNumber],
  STEELYARD_PUBLIC_URL: ["publicUrl", String],
  STEELYARD_SESSION_IDLE_MINUTES: ["sessions.idleMinutes", wholeNumber],
  STEELYARD_SESSION_HOURS: ["sessions.absoluteHours", wholeNumber],
  STEELYARD_LOG: ["log", String],
  STEELYARD_RETENTION_DAYS: ["retentionDays", wholeNumber],
  STEELYARD_LOCAL_LINK: ["localLink", yesOrNo],
};

/** Names of the environment variables that stand in for a setting. */
export const settingVariables: readonly string[] = Object.keys(overrides);

/**
 * The settings of a server from the text of its file (none: an empty text) and the environment, which wins; every fault, by its place, where there is one.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readSettings } from "@steelyard/records/settings";
 *
 * const read = readSettings({ text: "", env: { STEELYARD_PORT: "eighty" } });
 * assert.deepEqual(read.ok || read.error, [{ where: "STEELYARD_PORT", reason: "must be a number" }]);
 * ```
 */
export function readSettings({
  text,
  env,
}: {
  readonly text: string;
  readonly env: Readonly<Record<string, string | undefined>>;
}): Result<Settings, readonly SettingsFault[]> {
  const file = parse(text);
  if (!file.ok) return file;
  const named = new Map<string, string>();
  for (const [variable, [path, read]] of Object.entries(overrides)) {
    const value = env[variable];
    if (value === undefined || value === "") continue;
    put(file.value, path.split("."), read(value));
    named.set(path, variable);
  }
  const result = v.safeParse(settingsSchema, file.value);
  if (!result.success) {
    return err(result.issues.map((issue) => faultOf(v.getDotPath(issue) ?? "", issue, named)));
  }
  const exposed = faultOfExposure(result.output);
  return exposed === undefined ? ok(result.output) : err([exposed]);
}

function parse(text: string): Result<Json, readonly SettingsFault[]> {
  if (text.trim() === "") return ok({});
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value === "object" && value !== null && !Array.isArray(value)) return ok({ ...value });
    return err([{ where: "the settings file", reason: "must be one JSON object" }]);
  } catch (cause) {
    const reason = `is no JSON: ${cause instanceof Error ? cause.message : String(cause)}`;
    return err([{ where: "the settings file", reason }]);
  }
}

function faultOf(
  path: string,
  issue: { readonly message: string; readonly type: string },
  named: ReadonlyMap<string, string>,
): SettingsFault {
  const variable = [...named].find(([setting]) => path === setting || path.startsWith(`${setting}.`))?.[1];
  const reason = issue.type === "strict_object" ? "is no setting, or is missing" : issue.message;
  return { where: variable ?? (path === "" ? "the settings" : path), reason };
}

/** Tokens and cases do not cross a network in the clear unless somebody says so. */
function faultOfExposure({ listen, tls, trustProxy, insecureHttp }: Settings): SettingsFault | undefined {
  if (["127.0.0.1", "::1", "localhost"].includes(listen.host)) return undefined;
  if (tls !== undefined || trustProxy.length > 0 || insecureHttp) return undefined;
  return {
    where: "listen.host",
    reason: `is reached from other machines (${listen.host}): set tls, or trustProxy where a proxy ends TLS, or insecureHttp to true`,
  };
}

function put(target: Json, [name = "", ...rest]: readonly string[], value: unknown): void {
  if (rest.length === 0) {
    target[name] = value;
    return;
  }
  const inner = target[name];
  const next: Json = typeof inner === "object" && inner !== null && !Array.isArray(inner) ? { ...inner } : {};
  target[name] = next;
  put(next, rest, value);
}

/** Left as it is where it is none, so that the schema says what it must be. */
/** Anything else stays a text, which the schema refuses. */
function yesOrNo(text: string): unknown {
  return text === "true" ? true : text === "false" ? false : text;
}

function wholeNumber(text: string): unknown {
  return /^\d+$/.test(text) ? Number(text) : text;
}
