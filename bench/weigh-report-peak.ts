// Loaded before a program that is measured: on its end it writes its peak memory, kB, and processor time, ms, to
// file descriptor 3.
import { writeSync } from "node:fs";

process.on("exit", () => {
  const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
  writeSync(3, JSON.stringify({ peakKb: maxRSS, cpuMs: (userCPUTime + systemCPUTime) / 1000 }));
});
