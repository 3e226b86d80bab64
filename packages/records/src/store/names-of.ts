import type { Kysely } from "kysely";
import type { Tables } from "./tables.ts";

/** An actor of the log as a person or a device is called now; `command` and `server` by that word. */
export type NameOf = (actor: string) => { readonly id: string; readonly name: string };

export async function namesOf(db: Kysely<Tables>, site: string): Promise<NameOf> {
  const people = await db.selectFrom("person").select(["id", "name"]).where("site", "=", site).execute();
  const devices = await db.selectFrom("device").select(["id", "name"]).where("site", "=", site).execute();
  const names = new Map<string, string>([
    ...people.map(({ id, name }) => [`person:${id}`, name] as const),
    ...devices.map(({ id, name }) => [`device:${id}`, name] as const),
  ]);
  return (actor) => ({ id: actor.replace(/^person:/, ""), name: names.get(actor) ?? actor });
}
