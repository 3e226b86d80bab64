import { spawnSync } from "node:child_process";

export interface DebianPackage {
  readonly name: string;
  /** What the tests need it for, as "The tests need a browser". */
  readonly need: string;
  /** What to do where it cannot be installed. */
  readonly ask: string;
  readonly isHere: () => boolean;
}

/** Installs a package on Debian where it is missing; empty where it is ready, else what the person has to do. */
export function ensureDebianPackage({ name, need, ask, isHere }: DebianPackage): string {
  if (isHere()) return "";
  if (!has("apt-get")) return `${need}, and this is not a Debian system. ${ask}`;
  const isRoot = process.getuid?.() === 0;
  if (!isRoot && !has("sudo")) {
    return `${need}, and only root may install it. As root: apt-get install ${name}. ${ask}`;
  }
  console.log(`${need}: installing Debian's ${name}.`);
  const asRoot = isRoot ? [] : ["sudo"];
  const install = ["env", "DEBIAN_FRONTEND=noninteractive", "apt-get", "install", "-y", "-qq"];
  const done =
    run([...asRoot, "apt-get", "update", "-qq"]) &&
    run([...asRoot, ...install, "--no-install-recommends", name]);
  return done && isHere() ? "" : `Installing ${name} failed; apt-get says why above. ${ask}`;
}

function run(command: readonly string[]): boolean {
  const [program = "", ...args] = command;
  return spawnSync(program, args, { stdio: "inherit" }).status === 0;
}

function has(program: string): boolean {
  return spawnSync(program, ["--version"], { stdio: "ignore" }).error === undefined;
}
