import { Command } from "commander";
import { createCalibrateCommand } from "./calibrate/calibrate-command.ts";
import { createChildCommand } from "./child/child-command.ts";
import { createFormularyCommand } from "./formulary/formulary-command.ts";
import { createGivenCommand } from "./given/given-command.ts";
import { EXIT_STATUS_HELP, helpCautions } from "./help-text.ts";
import { createPaperCommand } from "./paper/paper-command.ts";
import { createStudyCommand } from "./study/study-command.ts";
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
  const commands = [
    createChildCommand(),
    createGivenCommand(),
    createWeighCommand(),
    createCalibrateCommand(),
    createStudyCommand(),
    createFormularyCommand(),
    createPaperCommand(),
  ];
  for (const command of commands) program.addCommand(command);
  for (const command of [program, ...commands, ...commands.flatMap((parent) => parent.commands)]) {
    command.exitOverride().showHelpAfterError("Try the option --help.");
  }
  return program;
}
