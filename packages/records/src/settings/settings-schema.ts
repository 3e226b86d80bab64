import * as v from "valibot";

const text = v.pipe(v.string("must be a text"), v.minLength(1, "must not be empty"));
const port = v.pipe(
  v.number("must be a number"),
  v.integer("must be a whole number"),
  v.minValue(0, "must be from 0 to 65535"),
  v.maxValue(65535, "must be from 0 to 65535"),
);
const count = (low: number, high: number) =>
  v.pipe(
    v.number("must be a number"),
    v.integer("must be a whole number"),
    v.minValue(low, `must be at least ${low}`),
    v.maxValue(high, `must be at most ${high}`),
  );

const database = v.variant(
  "type",
  [
    v.strictObject({ type: v.literal("sqlite"), file: text }),
    v.strictObject({
      type: v.literal("postgres"),
      url: v.pipe(text, v.regex(/^postgres(ql)?:\/\//, "must begin with postgres://")),
    }),
  ],
  'must be "sqlite" or "postgres"',
);

export interface Settings {
  readonly listen: { readonly host: string; readonly port: number };
  readonly database:
    | { readonly type: "sqlite"; readonly file: string }
    | { readonly type: "postgres"; readonly url: string };
  /** The site whose records this server keeps where only one is asked for. */
  readonly site: string;
  readonly tls?: { readonly certificateFile: string; readonly keyFile: string } | undefined;
  /** Addresses of proxies that end TLS before this server; what they say of the client is believed. */
  readonly trustProxy: readonly string[];
  /** Plain HTTP beyond this machine. For a network that is protected in another way. */
  readonly insecureHttp: boolean;
  readonly limits: { readonly bodyBytes: number; readonly requestsPerMinute: number };
  /** `/ready` says so where less is free in the folder: that of the SQLite file, or one that is named. */
  readonly disk: { readonly folder?: string | undefined; readonly leastFreeBytes: number };
  /** Where people reach the page, as `https://steelyard.hospital.example`: passkeys belong to this name, and only its page may write. */
  readonly publicUrl?: string | undefined;
  readonly sessions: { readonly idleMinutes: number; readonly absoluteHours: number };
  readonly log: "debug" | "info" | "warn" | "error" | "silent";
  /** Cases that nothing reached for so long are purged; never where absent. */
  readonly retentionDays?: number | undefined;
  /** Whether a page may keep a sealed text beside a case, which only the site's passphrase opens. */
  readonly localLink: boolean;
}

export const settingsSchema: v.GenericSchema<unknown, Settings> = v.strictObject({
  listen: v.optional(
    v.strictObject({ host: v.optional(text, "127.0.0.1"), port: v.optional(port, 8317) }),
    {},
  ),
  database: v.optional(database, { type: "sqlite", file: "steelyard.sqlite" }),
  site: v.optional(
    v.pipe(text, v.regex(/^[a-z0-9][a-z0-9-]{0,39}$/, "must be small letters, digits and hyphens")),
    "main",
  ),
  tls: v.optional(v.strictObject({ certificateFile: text, keyFile: text })),
  trustProxy: v.optional(v.array(text), []),
  insecureHttp: v.optional(v.boolean("must be true or false"), false),
  limits: v.optional(
    v.strictObject({
      bodyBytes: v.optional(count(65_536, 16_777_216), 1_048_576),
      requestsPerMinute: v.optional(count(1, 100_000), 600),
    }),
    {},
  ),
  disk: v.optional(
    v.strictObject({
      folder: v.optional(text),
      leastFreeBytes: v.optional(count(0, Number.MAX_SAFE_INTEGER), 268_435_456),
    }),
    {},
  ),
  publicUrl: v.optional(
    v.pipe(
      text,
      v.regex(/^https?:\/\/[^/?#@\s]+\/?$/, "must be an address such as https://steelyard.hospital.example"),
      v.check((address) => URL.canParse(address), "must be an address that can be read"),
    ),
  ),
  // Both limits as NIST SP 800-63B has them for its second level (memory).
  sessions: v.optional(
    v.strictObject({
      idleMinutes: v.optional(count(1, 1_440), 30),
      absoluteHours: v.optional(count(1, 168), 12),
    }),
    {},
  ),
  log: v.optional(
    v.picklist(["debug", "info", "warn", "error", "silent"], "must be debug, info, warn, error or silent"),
    "info",
  ),
  retentionDays: v.optional(count(1, 36_500)),
  localLink: v.optional(v.boolean("must be true or false"), false),
}) as unknown as v.GenericSchema<unknown, Settings>;
