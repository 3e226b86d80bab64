import { parseArgs } from "node:util";

const defaultPort = 8317;

export const usage = `Serves the Bedside page to this machine only, or with --records to a department whose cases it keeps.

Usage: node apps/server/src/main.ts [--port NUMBER] [--records] [--settings FILE]

  --port NUMBER    port to listen on (default ${defaultPort}, or the environment variable PORT; 0 picks a free one)
  --records        keep the cases of a department too; settings by the environment or a file
  --settings FILE  the settings of the records, as JSON; means --records. See docs/operations.md
  --help           this text
`;

export type Options =
  | { readonly type: "serve"; readonly port: number }
  | { readonly type: "serve-records"; readonly port?: string; readonly settingsFile?: string }
  | { readonly type: "help" }
  | { readonly type: "wrong-usage"; readonly message: string };

/** Reads the command line and the environment; `--port` wins over `PORT`. */
export function readOptions({
  args,
  env,
}: {
  readonly args: readonly string[];
  readonly env: Readonly<Record<string, string | undefined>>;
}): Options {
  let values: { port?: string; help?: boolean; records?: boolean; settings?: string };
  try {
    ({ values } = parseArgs({
      args: [...args],
      options: {
        port: { type: "string" },
        help: { type: "boolean" },
        records: { type: "boolean" },
        settings: { type: "string" },
      },
    }));
  } catch (error) {
    return { type: "wrong-usage", message: error instanceof Error ? error.message : String(error) };
  }
  if (values.help) return { type: "help" };
  if (values.records || values.settings !== undefined) {
    return {
      type: "serve-records",
      ...(values.port === undefined ? {} : { port: values.port }),
      ...(values.settings === undefined ? {} : { settingsFile: values.settings }),
    };
  }

  const [name, text] = values.port === undefined ? ["PORT", env.PORT] : ["--port", values.port];
  if (text === undefined || text === "") return { type: "serve", port: defaultPort };
  const port = Number(text);
  if (!/^\d+$/.test(text) || port > 65535) {
    return { type: "wrong-usage", message: `${name} must be a whole number from 0 to 65535, not “${text}”.` };
  }
  return { type: "serve", port };
}
