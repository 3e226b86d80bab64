import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";

/** So many pages pass through the heap between two collections. */
const every = 6;

/**
 * Keeps the process under 300 MB while it makes a booklet: of the gigabyte that passes through the heap little lives for longer than a moment,
 * and left alone Node lets the space for it grow by 200 MB. Called after each page that is written, what it gives back collects now and then.
 */
export function keepHeapSmall(): (done: number) => void {
  setFlagsFromString("--semi-space-growth-factor=1");
  setFlagsFromString("--expose-gc");
  const collect = runInNewContext("gc") as () => void;
  return (done) => {
    if (done % every === 0) collect();
  };
}
