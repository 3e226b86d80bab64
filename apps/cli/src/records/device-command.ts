import { randomBytes, randomUUID } from "node:crypto";
import type { Command } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { EXIT_STATUS_HELP } from "../help-text.ts";
import { type RecordsOptions, withRecords, withSettings } from "./open-records.ts";

const HELP = `
A device sends its cases with a token, which is printed once, when it is enrolled. A
lost device is revoked; what it has sent stays.

${EXIT_STATUS_HELP}`;

/** Who is written into the audit log for what is done on the console of the server. */
const actor = "console";

/** `steelyard device add --name "Resus tablet 1"`. */
export function defineDeviceCommand(command: Command): void {
  withSettings(command.command("add").description("enrol a device and print its token, once"))
    .requiredOption("--name <text>", "what people call it, up to 60 characters")
    .action(addDevice);
  withSettings(command.command("list").description("the devices of the site")).action(listDevices);
  withSettings(command.command("revoke").description("let a device send no more"))
    .argument("<id>", "as `device list` shows it")
    .action(revokeDevice);
  command.addHelpText("after", HELP);
}

async function addDevice({ name, ...options }: RecordsOptions & { readonly name: string }): Promise<void> {
  const called = name.trim();
  if (called === "" || called.length > 60) {
    throw new CommandFailure(
      EXIT.wrongUsage,
      `--name must have 1 to 60 characters: it has ${called.length}.`,
    );
  }
  await withRecords(options, async ({ store, settings: { site } }) => {
    await store.addSite(site);
    const token = randomBytes(32).toString("base64url");
    const device = await store.enrolDevice({ site, actor, id: randomUUID(), name: called, token });
    process.stdout.write(`${token}\n`);
    process.stderr.write(
      `Enrolled ${device.name} (${device.id}) at ${site}. The token above is shown only now: type it on the device.\n`,
    );
  });
}

async function listDevices(options: RecordsOptions): Promise<void> {
  await withRecords(options, async ({ store, settings: { site } }) => {
    const devices = await store.listDevices(site);
    if (devices.length === 0) process.stderr.write(`No device is enrolled at ${site}.\n`);
    for (const { id, name, enrolledAt, revokedAt } of devices) {
      const until = revokedAt === undefined ? "" : `, revoked ${revokedAt}`;
      process.stdout.write(`${id}  ${name}, enrolled ${enrolledAt}${until}\n`);
    }
  });
}

async function revokeDevice(id: string, options: RecordsOptions): Promise<void> {
  await withRecords(options, async ({ store, settings: { site } }) => {
    const done = await store.revokeDevice({ site, actor, id });
    if (!done) {
      throw new CommandFailure(
        EXIT.notServed,
        `There is no device ${id} at ${site} that could be revoked: see \`steelyard device list\`.`,
      );
    }
    process.stderr.write(`Revoked ${id}. What it has sent stays; what it still holds stays on it.\n`);
  });
}
