import { existsSync } from "node:fs";
import { join } from "node:path";
import { cruise, type ICruiseResult, type IReporterOutput } from "dependency-cruiser";
import config from "../.dependency-cruiser.ts";

const roots = ["packages", "apps", "reference"];

/**
 * Follows every import under `baseDir` and holds it against the boundary rules.
 *
 * Throws when nothing, or no TypeScript, was read: a cruise that sees nothing finds nothing wrong.
 */
export async function cruiseTree(baseDir: string): Promise<ICruiseResult> {
  const present = roots.filter((root) => existsSync(join(baseDir, root)));
  const report: IReporterOutput = await cruise(present, {
    ...config.options,
    baseDir,
    validate: true,
    ruleSet: { forbidden: config.forbidden ?? [] },
  });
  if (typeof report.output === "string")
    throw new TypeError("Cannot read the cruise as it is text, not data");
  for (const root of present) {
    const ours = report.output.modules.filter(({ source }) => source.startsWith(`${root}/`));
    if (!ours.some(({ source }) => /\.tsx?$/.test(source))) {
      throw new RangeError(`Cannot check boundaries as no TypeScript file was read under ${root}/`);
    }
  }
  if (present.length === 0)
    throw new RangeError(`Cannot check boundaries as ${roots.join(", ")} do not exist`);
  return report.output;
}
