import type { Result } from "@steelyard/core/result";
import { type Accounts, createAccounts } from "@steelyard/records/accounts";
import { type PersonRole, personRoles } from "@steelyard/records/department";
import { type Command, InvalidArgumentError } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { EXIT_STATUS_HELP } from "../help-text.ts";
import { type RecordsOptions, withRecords, withSettings } from "./open-records.ts";

const HELP = `
People sign in on the page of the department; at the bedside nobody needs to. Here is the
way back in where nobody can: \`reset\` takes away password, passkeys and sessions and
prints a new invitation, for the last administrator too.

${EXIT_STATUS_HELP}`;

/** Who is written into the audit log for what is done on the console of the server. */
const actor = "console";

/** `steelyard person invite --name "Cara Hollis" --role clinician`. */
export function definePersonCommand(command: Command): void {
  withSettings(command.command("list").description("the people of the site")).action(listPeople);
  withSettings(command.command("invite").description("let somebody join and print the code, once"))
    .requiredOption("--name <text>", "what people are called, up to 80 characters")
    .requiredOption("--role <role>", `${personRoles.join(", ")}; more with commas`, readRoles)
    .action(invitePerson);
  withSettings(command.command("unlock").description("open a login that too many wrong passwords shut"))
    .argument("<id>", "as `person list` shows it")
    .action(unlockPerson);
  withSettings(command.command("reset").description("take away all ways in and print a new invitation"))
    .argument("<id>", "as `person list` shows it")
    .action(resetPerson);
  command.addHelpText("after", HELP);
}

function readRoles(text: string): readonly PersonRole[] {
  const roles = [...new Set(text.split(",").map((part) => part.trim()))];
  const known = roles.filter((role): role is PersonRole => personRoles.some((own) => own === role));
  if (known.length < roles.length) throw new InvalidArgumentError(`It must be of ${personRoles.join(", ")}.`);
  return known;
}

type Work = (accounts: Accounts, site: string) => Promise<void>;

/** Nobody signs in here, so the limits of sessions do not matter. */
async function withPeople(options: RecordsOptions, work: Work): Promise<void> {
  await withRecords(options, async ({ store, settings: { site } }) => {
    await store.addSite(site);
    await work(createAccounts({ store, site, limits: { idleMs: 0, absoluteMs: 0 } }), site);
  });
}

async function listPeople(options: RecordsOptions): Promise<void> {
  await withPeople(options, async (accounts, site) => {
    const people = await accounts.list(site);
    if (people.length === 0) process.stderr.write(`Nobody was invited to ${site} yet.\n`);
    for (const { id, name, login, roles, state, locked } of people) {
      const called = login === undefined ? name : `${name} (${login})`;
      process.stdout.write(`${id}  ${called}, ${roles.join(" and ")}, ${locked ? "locked" : state}\n`);
    }
  });
}

async function invitePerson({
  name,
  role: roles,
  ...options
}: RecordsOptions & { readonly name: string; readonly role: readonly PersonRole[] }): Promise<void> {
  const called = name.trim();
  if (called === "" || called.length > 80 || /\p{C}/u.test(called)) {
    throw new CommandFailure(EXIT.wrongUsage, "--name must have 1 to 80 characters on one line.");
  }
  await withPeople(options, async (accounts, site) => {
    const { code, expiresAt } = await accounts.invite({ site, actor, name: called, roles });
    printCode(code, `Invited ${called} to ${site}`, expiresAt);
  });
}

async function unlockPerson(id: string, options: RecordsOptions): Promise<void> {
  await withPeople(options, async (accounts, site) => {
    await known(id, site, accounts.unlock({ site, actor, id }));
    process.stderr.write(`Unlocked ${id}.\n`);
  });
}

async function resetPerson(id: string, options: RecordsOptions): Promise<void> {
  await withPeople(options, async (accounts, site) => {
    const order = { site, actor, id, evenLast: true };
    const { code, expiresAt } = await known(id, site, accounts.reset(order));
    printCode(code, `Reset ${id}`, expiresAt);
  });
}

async function known<T>(id: string, site: string, work: Promise<Result<T, unknown>>): Promise<T> {
  const done = await work;
  if (done.ok) return done.value;
  throw new CommandFailure(
    EXIT.notServed,
    `There is no ${id} at ${site} for whom that could be done: see \`steelyard person list\`.`,
  );
}

function printCode(code: string, what: string, expiresAt: string): void {
  process.stdout.write(`${code}\n`);
  process.stderr.write(
    `${what}. The code above is shown only now and good until ${expiresAt}: it is typed on the page of the department.\n`,
  );
}
