import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

/** One instruction of a container file, its continued lines joined. */
interface Instruction {
  readonly name: string;
  readonly rest: string;
}

function readInstructions(text: string): readonly Instruction[] {
  const lines = text
    .replaceAll(/^#.*\n/gm, "")
    .replaceAll(/\\\n\s*/g, "")
    .split("\n");
  return lines
    .filter((line) => line.trim() !== "")
    .map((line) => /^(\w+)\s+(.*)$/.exec(line) ?? [line, "unreadable", line])
    .map(([, name = "", rest = ""]) => ({ name, rest }));
}

/** What would keep an image of this file from being built, or from being safe to run. */
function faultsOf(text: string): readonly string[] {
  const instructions = readInstructions(text);
  const of = (name: string) => instructions.filter((each) => each.name === name).map(({ rest }) => rest);
  const faults: string[] = [];
  const say = (when: boolean, fault: string) => void (when && faults.push(fault));
  const known = /^(FROM|WORKDIR|COPY|RUN|USER|VOLUME|ENV|EXPOSE|STOPSIGNAL|HEALTHCHECK|CMD)$/;
  for (const { name } of instructions) say(!known.test(name), `does not know ${name}`);
  for (const base of of("FROM")) {
    say(!/^[\w.-]+\/\S+(:\d[\w.-]*|@sha256:[0-9a-f]{64})( AS \w+)?$/.test(base), `pins no base: ${base}`);
  }
  for (const copy of of("COPY").filter((each) => !each.startsWith("--from="))) {
    for (const source of copy.split(/\s+/).slice(0, -1))
      say(!existsSync(source), `copies no file: ${source}`);
  }
  const last = instructions.slice(instructions.findLastIndex(({ name }) => name === "FROM"));
  const user = last.filter(({ name }) => name === "USER").at(-1)?.rest ?? "root";
  say(/^(root|0)(:|$)/.test(user), "runs as root");
  for (const name of ["HEALTHCHECK", "EXPOSE", "STOPSIGNAL", "CMD"]) {
    say(!last.some((each) => each.name === name), `has no ${name}`);
  }
  const [program, script] = JSON.parse(of("CMD").at(-1) ?? "[]") as readonly string[];
  say(program !== "node" || !existsSync(script ?? ""), `starts nothing: ${script}`);
  say(
    of("RUN").some((run) => /npm install\b/.test(run)),
    "installs what no lock file names",
  );
  return faults;
}

describe("the container file", () => {
  const text = readFileSync("deploy/Containerfile", "utf8");

  it("pins its base, copies what there is, runs unprivileged, and says how it is", () => {
    expect(faultsOf(text)).toEqual([]);
    const node = (JSON.parse(readFileSync("package.json", "utf8")) as { devDependencies: { node: string } })
      .devDependencies.node;
    for (const [, major] of text.matchAll(/\/node:(\d+)/g)) expect(node.split(".")[0]).toBe(major);
  });

  it("keeps what is here of other builds out of the image", () => {
    expect(readFileSync(".containerignore", "utf8").split("\n")).toEqual(
      expect.arrayContaining([".git", "**/node_modules"]),
    );
  });

  it.each<[plant: string, from: RegExp, to: string, fault: string]>([
    ["no version", /node:24-bookworm-slim\n/, "node\n", "pins no base"],
    ["no user", /^USER node$/m, "USER root", "runs as root"],
    ["a file that is not there", /^COPY \. \.$/m, "COPY nothing.json .", "copies no file: nothing.json"],
    ["no question after its health", /^HEALTHCHECK.*\\\n.*$/m, "", "has no HEALTHCHECK"],
    ["another program", /apps\/server\/src\/main\.ts/, "apps/server/main.js", "starts nothing"],
    ["a loose install", /npm ci/, "npm install", "installs what no lock file names"],
  ])("is seen to be wrong with %s", (_plant, from, to, fault) => {
    const planted = text.replace(from, to);
    expect(planted).not.toBe(text);
    expect(faultsOf(planted).join("; ")).toContain(fault);
  });
});

describe("the unit file", () => {
  it("starts a file that is there, unprivileged, and is told to read its certificate again", () => {
    const text = readFileSync("deploy/steelyard.service", "utf8");
    const started = /^ExecStart=\S+ \/opt\/steelyard\/(\S+)/m.exec(text)?.[1] ?? "";
    expect(existsSync(started)).toBe(true);
    expect(text).toMatch(/^DynamicUser=yes$/m);
    expect(text).toMatch(/^ExecReload=\S*kill -HUP \$MAINPID$/m);
  });

  it("is one that systemd reads without a word", ({ skip }) => {
    skip(spawnSync("systemd-analyze", ["--version"]).status !== 0, "SKIPPED: systemd is not installed here");
    const { stderr, stdout } = spawnSync("systemd-analyze", ["verify", "deploy/steelyard.service"], {
      encoding: "utf8",
    });
    // That the project is not installed under /opt here is all it may have to say.
    const said = `${stdout}${stderr}`.split("\n").filter((line) => line.includes("steelyard.service"));
    expect(said.filter((line) => !line.includes("is not executable"))).toEqual([]);
  });
});
