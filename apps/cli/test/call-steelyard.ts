import { Readable, Writable } from "node:stream";
import { runProgram } from "../src/run-program.ts";
import type { Run } from "./run-steelyard.ts";

/**
 * Runs the command in this process, with its streams caught: starting Node is the dearest part of a call. Where the
 * process itself is what is tested (status, signals, a broken pipe), `runSteelyard` starts one.
 */
export async function callSteelyard(
  args: readonly string[],
  { input = "", cwd }: { input?: string | Buffer; cwd?: string } = {},
): Promise<Run> {
  const stdout = collector();
  const stderr = collector();
  const before = process.cwd();
  const restore = [
    replace("stdin", Readable.from([Buffer.from(input)], { objectMode: false })),
    replace("stdout", stdout.stream),
    replace("stderr", stderr.stream),
  ];
  try {
    if (cwd !== undefined) process.chdir(cwd);
    const status = await runProgram(args);
    return { status, stdout: stdout.text(), stderr: stderr.text().replaceAll(/\s+/g, " ").trim() };
  } finally {
    process.chdir(before);
    for (const each of restore) each();
  }
}

function collector(): { readonly stream: Writable; readonly text: () => string } {
  const chunks: Buffer[] = [];
  const stream = new Writable({
    decodeStrings: true,
    write(chunk: Buffer, _encoding, done) {
      chunks.push(chunk);
      done();
    },
  });
  return { stream, text: () => Buffer.concat(chunks).toString("utf8") };
}

/** Puts a stream in the place of one of the process, and gives back what undoes it. */
function replace(name: "stdin" | "stdout" | "stderr", stream: Readable | Writable): () => void {
  const own = Object.getOwnPropertyDescriptor(process, name);
  Object.defineProperty(process, name, { value: stream, configurable: true });
  return () => {
    if (own === undefined) throw new TypeError(`Cannot give ${name} back as the process had none`);
    Object.defineProperty(process, name, own);
  };
}
