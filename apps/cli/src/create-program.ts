import { Command } from "commander";
import { EXIT_STATUS_HELP, helpCautions } from "./help-text.ts";
import { VersionsAsked } from "./versions-asked.ts";

interface LazyCommand {
  readonly name: string;
  readonly description: string;
  /** Loads what the command needs; what it returns adds options and action. */
  readonly load: () => Promise<(command: Command) => void>;
}

/** A command is loaded when it is called: weighing a file need not wait for the typesetter of the papers. */
const COMMANDS: readonly LazyCommand[] = [
  {
    name: "child",
    description: "One child: weight with its range, ideal weight and the sheet of doses.",
    load: async () => (await import("./child/child-command.ts")).defineChildCommand,
  },
  {
    name: "given",
    description: "Doses given so far: totals, what is left under each maximum, when the next is due.",
    load: async () => (await import("./given/given-command.ts")).defineGivenCommand,
  },
  {
    name: "weigh",
    description: "Weigh every child of a CSV file.",
    load: async () => (await import("./weigh/weigh-command.ts")).defineWeighCommand,
  },
  {
    name: "calibrate",
    description: "Learn how the children of your site differ, from rows with a scale weight.",
    load: async () => (await import("./calibrate/calibrate-command.ts")).defineCalibrateCommand,
  },
  {
    name: "study",
    description: "Judge methods against scale weights, and write the report.",
    load: async () => (await import("./study/study-command.ts")).defineStudyCommand,
  },
  {
    name: "formulary",
    description: "Check, read, compare, change and sign a formulary.",
    load: async () => (await import("./formulary/formulary-command.ts")).defineFormularyCommand,
  },
  {
    name: "paper",
    description: "True-scale papers for a bay without a screen, as PDF or SVG.",
    load: async () => (await import("./paper/paper-command.ts")).definePaperCommand,
  },
  {
    name: "serve",
    description: "Serve the page and keep the cases of a department.",
    load: async () => (await import("./records/serve-command.ts")).defineServeCommand,
  },
  {
    name: "device",
    description: "Enrol, list and revoke the devices that may send cases.",
    load: async () => (await import("./records/device-command.ts")).defineDeviceCommand,
  },
  {
    name: "person",
    description: "List and invite people, and let them in again.",
    load: async () => (await import("./records/person-command.ts")).definePersonCommand,
  },
  {
    name: "audit",
    description: "Read the audit log of the records, and verify it.",
    load: async () => (await import("./records/audit-command.ts")).defineAuditCommand,
  },
  {
    name: "backup",
    description: "Write the records to a file while the server runs.",
    load: async () => (await import("./records/backup-command.ts")).defineBackupCommand,
  },
  {
    name: "restore",
    description: "Put a backup into an empty database.",
    load: async () => (await import("./records/backup-command.ts")).defineRestoreCommand,
  },
];

/** The whole command, ready to parse its arguments with `parseAsync`. */
export function createProgram(): Command {
  const program = new Command("steelyard")
    .description("A child's weight from its length and arm, and the doses that follow from it.")
    .option("-V, --version", "print the versions of software, body model and formulary")
    .helpOption("-h, --help", "print this help")
    .helpCommand(false)
    .addHelpText("after", () => `\n${EXIT_STATUS_HELP}\n${helpCautions()}`)
    .exitOverride()
    .showHelpAfterError("Try the option --help.");
  program.on("option:version", () => {
    throw new VersionsAsked();
  });
  const unloaded = new Map<Command, LazyCommand["load"]>();
  for (const { name, description, load } of COMMANDS) {
    // What is set on the program holds for `program.command()` as well, but not for what the command adds itself.
    unloaded.set(program.command(name).description(description), load);
  }
  const prepare = async (command: Command): Promise<void> => {
    const define = await unloaded.get(command)?.();
    unloaded.delete(command);
    define?.(command);
    for (const own of command.commands) own.copyInheritedSettings(command);
  };
  program.hook("preSubcommand", (_, command) => prepare(command));
  program
    .command("help")
    .description("print the help of a command")
    .argument("[command]")
    .action(async (name: string | undefined) => {
      if (name === undefined) return program.help();
      const command = program.commands.find((each) => each.name() === name);
      if (command === undefined) return program.error(`error: unknown command '${name}'`);
      await prepare(command);
      command.help();
    });
  return program;
}
