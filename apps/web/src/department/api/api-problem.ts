/** Why there is no answer, as far as a screen has to tell the cases apart. */
export type ApiProblem =
  /** No answer at all. */
  | { readonly type: "unreachable" }
  /** A server is there, and keeps no records. */
  | { readonly type: "no-records" }
  /** The answer is not one that this page knows: page and server are of different versions. */
  | { readonly type: "update-needed" }
  | {
      readonly type: "refused";
      readonly status: number;
      /** The server's word: "wrong-credentials". */
      readonly problem: string;
      readonly reason?: string;
      readonly faults?: readonly { readonly place: string; readonly message: string }[];
    };

/** Whether the session has ended: by time, by another tab, or by an administrator. */
export function isSessionOver(problem: ApiProblem): boolean {
  return (
    problem.type === "refused" &&
    problem.status === 401 &&
    problem.problem !== "wrong-credentials" &&
    problem.problem !== "wrong-password"
  );
}
