import type { VNode } from "preact";
import { FormularyText } from "../../components/formulary-text/formulary-text.tsx";
import type { ApiProblem } from "../api/api-problem.ts";
import { words } from "../messages/index.ts";
import { writeTime } from "./write-time.ts";

/** What the server said against something, in words; the alert is there before there is one, so that it is heard. */
export function ProblemNote({ problem }: { readonly problem: ApiProblem | undefined }): VNode {
  const faults = problem?.type === "refused" ? (problem.faults ?? []) : [];
  return (
    <div role="alert" class={problem === undefined ? undefined : "note note--warn"}>
      {problem !== undefined && <p>{describeApiProblem(problem)}</p>}
      {faults.length > 0 && (
        <ul class="faults">
          {faults.slice(0, 12).map(({ place, message }) => (
            <li key={`${place}${message}`}>
              <FormularyText>
                <b>{place}</b> {message}
              </FormularyText>
            </li>
          ))}
          {faults.length > 12 && <li>{words.more(faults.length - 12)}</li>}
        </ul>
      )}
    </div>
  );
}

/** A sentence for every case; the server's own reason, in English, where it gave one that is not known here. */
function describeApiProblem(problem: ApiProblem): string {
  if (problem.type !== "refused") return words.problems[problem.type];
  const { status, problem: code, reason } = problem;
  const known = (words.refusals as Readonly<Record<string, string>>)[code];
  if (code === "locked" && reason !== undefined && !Number.isNaN(Date.parse(reason)))
    return words.lockedUntil(writeTime(reason));
  if (known !== undefined) return known;
  if (status === 401) return words.refusals["signed-out"];
  if (status === 403) return words.refusals["not-allowed"];
  if (status === 503) return words.refusals["store-trouble"];
  return words.refusedBecause(reason ?? code);
}
