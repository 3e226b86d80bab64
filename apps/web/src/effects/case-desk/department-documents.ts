import { type DocumentsInForce, syncProtocol } from "@steelyard/records/sync";
import {
  type DepartmentState,
  type DocumentKind,
  documentKinds,
  noDocuments,
} from "../../state/department.ts";
import type { KeptDepartment } from "../kept-department.ts";
import { findSite } from "../kept-site.ts";
import { sha256 } from "../sha256.ts";
import { keptRules, type NextRules } from "../site-rules/rules-store.ts";
import { offerRules } from "../site-rules/site-rules.ts";

type DocumentState = Pick<DepartmentState, "holds" | "refusedDocuments">;
type Hashes = DepartmentState["holds"];

/** The formulary and the calibration that a department hands out to this device. */
export interface DepartmentDocuments {
  readonly state: () => DocumentState;
  /** Asks once what is in force, and gives it to the children from the next one on. */
  readonly look: (ask: (query: string) => Promise<DocumentsInForce | undefined>) => Promise<void>;
  /** The device is linked with another department, or with none any more; `drop` gives back what this one handed out. */
  readonly end: (drop: boolean) => Promise<void>;
}

/** `remember` keeps which calibration came from the department; a formulary says so itself. */
export function departmentDocuments(
  kept: () => KeptDepartment | undefined,
  remember: (calibration: string | undefined) => void,
): DepartmentDocuments {
  let state: DocumentState | undefined;
  let finding: Promise<DocumentState> | undefined;
  /** The last that came of each kind, good or not: it is not fetched again. */
  let seen: Hashes = {};
  /** Grows at each end: an answer that was asked for before it is nobody's any more. */
  let links = 0;
  /** Handing to the children and taking from them, one after the other. */
  let turn: Promise<void> = Promise.resolve();
  const inTurn = (work: () => Promise<void>): Promise<void> => {
    const done = turn.then(work);
    turn = done.catch(() => undefined);
    return done;
  };

  const found = async (): Promise<DocumentState> => {
    if (state !== undefined) return state;
    finding ??= heldOf(kept()).then((holds) => ({ ...noDocuments, holds }));
    const first = await finding;
    if (state === undefined) {
      state = first;
      seen = first.holds;
    }
    return state;
  };
  return {
    state: () => state ?? noDocuments,
    look: async (ask) => {
      const link = links;
      await turn;
      const before = await found();
      const answer = await ask(`${new URLSearchParams({ protocol: `${syncProtocol}`, ...seen })}`);
      if (answer === undefined || link !== links) return;
      const came = documentKinds.filter((kind) => answer[kind] !== undefined);
      // None in force, and none held: nothing is new.
      const isNew = came.some((kind) => answer[kind] !== null || seen[kind] !== undefined);
      if (!isNew) return;
      const { readDocuments } = await import("../site-rules/read-documents.ts");
      const { refused, ...rules } = await readDocuments(answer, sha256);
      // What the site took from a file is not the department's to take off.
      const offered = {
        ...(rules.formulary !== undefined &&
          (rules.formulary !== null || before.holds.formulary !== undefined) && {
            formulary: rules.formulary,
          }),
        ...(rules.site !== undefined &&
          (rules.site !== null || before.holds.calibration !== undefined) && { site: rules.site }),
      };
      await inTurn(async () => {
        if (link !== links) return;
        const isKept = Object.keys(offered).length === 0 || (await offerRules(offered));
        let { holds } = before;
        for (const kind of came) {
          const name = answer[kind]?.sha256;
          seen = named(seen, kind, name);
          if (!refused.some((one) => one.kind === kind)) holds = named(holds, kind, name);
        }
        const stillRefused = before.refusedDocuments.filter(({ kind }) => !came.includes(kind));
        // Even where the link ended meanwhile: the end comes next, and has to know what there is to give back.
        state = { holds, refusedDocuments: [...stillRefused, ...refused] };
        if (link === links && isKept && holds.calibration !== before.holds.calibration) {
          remember(holds.calibration);
        }
      });
    },
    end: (drop) => {
      links += 1;
      // Looked for while the link that it came by is still known.
      const before = found();
      return inTurn(async () => {
        await before;
        const { holds } = await found();
        state = noDocuments;
        seen = {};
        if (!drop || (holds.formulary === undefined && holds.calibration === undefined)) return;
        await offerRules({
          ...(holds.formulary !== undefined && { formulary: null }),
          ...(holds.calibration !== undefined && { site: null }),
        });
      });
    },
  };
}

/** What is on the device already, by the names that came with it. */
async function heldOf(kept: KeptDepartment | undefined): Promise<Hashes> {
  const { inUse, next } = await keptRules().catch(() => ({ inUse: undefined, next: {} as NextRules }));
  const formulary = (next.formulary === undefined ? inUse : next.formulary)?.document;
  const site = next.site === undefined ? findSite() : next.site;
  const calibration = site ? kept?.calibration : undefined;
  return { ...(formulary !== undefined && { formulary }), ...(calibration !== undefined && { calibration }) };
}

function named(hashes: Hashes, kind: DocumentKind, name: string | undefined): Hashes {
  const { [kind]: _, ...others } = hashes;
  return name === undefined ? others : { ...others, [kind]: name };
}
