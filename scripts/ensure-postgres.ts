// `npm test` brings a PostgreSQL for the tests of the records: one that is here, or Debian's package. Nothing of it is
// started or stopped here; the tests run their own in a temporary folder. Without one those tests skip and say so.
import { ensureDebianPackage } from "./ensure-debian-package.ts";
import { findPostgres } from "./find-postgres.ts";

const trouble = ensureDebianPackage({
  name: "postgresql",
  need: "The tests of the records need PostgreSQL",
  ask: "Install PostgreSQL and set STEELYARD_POSTGRES_BIN to the folder of its initdb.",
  isHere: () => findPostgres() !== undefined,
});
if (trouble !== "") console.error(`${trouble} Until then the tests on PostgreSQL are skipped.`);
