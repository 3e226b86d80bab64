import { readdirSync, readFileSync } from "node:fs";

/** Ticks of a second in which Linux counts processor time; 100 on every machine that Node runs on. */
const TICKS = 100;

/** Processor time of a process so far, and with `children` of those it started, whether they run or have ended, s. */
export function processSeconds(pid: number, { children }: { readonly children: boolean }): number {
  if (!children) return secondsOf(pid);
  const [endedUser, endedSystem] = fieldsOf(pid).slice(13, 15).map(Number);
  const running = [pid, ...childrenOf(pid)].reduce((sum, each) => sum + secondsOf(each), 0);
  return running + ((endedUser ?? 0) + (endedSystem ?? 0)) / TICKS;
}

/** Processor time of everything on the machine so far, s; waiting for a disk is none. */
export function machineSeconds(): number {
  const [first = ""] = readFileSync("/proc/stat", "utf8").split("\n", 1);
  const [, user = 0, nice = 0, system = 0, , , irq = 0, softirq = 0] = first.split(/\s+/).map(Number);
  return (user + nice + system + irq + softirq) / TICKS;
}

function childrenOf(parent: number): readonly number[] {
  return readdirSync("/proc")
    .filter((name) => /^\d+$/.test(name) && fieldsOf(Number(name))[1] === String(parent))
    .map(Number);
}

function secondsOf(pid: number): number {
  const fields = fieldsOf(pid);
  return (Number(fields[11] ?? 0) + Number(fields[12] ?? 0)) / TICKS;
}

/** From the state on, as the name of the program may hold anything; see proc(5). */
function fieldsOf(pid: number): readonly string[] {
  try {
    return readFileSync(`/proc/${pid}/stat`, "utf8").split(") ").at(-1)?.split(" ") ?? [];
  } catch {
    return [];
  }
}
