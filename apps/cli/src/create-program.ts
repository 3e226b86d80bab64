import { Command } from "commander";
import { createChildCommand } from "./child/child-command.ts";
import { EXIT_STATUS_HELP, helpCautions } from "./help-text.ts";
import { describeVersions } from "./versions.ts";
import { createWeighCommand } from "./weigh/weigh-command.ts";

/** The whole command, ready to parse its arguments. */
export function createProgram(): Command {
  const program = new Command("steelyard")
    .description("A child's weight from its length and arm, and the doses that follow from it.")
    .version(describeVersions(), "-V, --version", "print the versions of software, body model and formulary")
    .helpOption("-h, --help", "print this help")
    .helpCommand("help [command]", "print the help of a command")
    .addHelpText("after", `\n${EXIT_STATUS_HELP}\n${helpCautions()}`);
  for (const command of [createChildCommand(), createWeighCommand()]) program.addCommand(command);
  for (const command of [program, ...program.commands]) {
    command.exitOverride().showHelpAfterError("Try the option --help.");
  }
  return program;
}
