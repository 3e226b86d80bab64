// The server of the records as `--records` runs it, on a page that need not be built.
import { serveRecords } from "../src/serve-records.ts";

process.exitCode = await serveRecords({ pageDir: import.meta.dirname, env: process.env });
