import { draftFormulary } from "@steelyard/formulary";
import { type DocumentEntry, type FitAnswer, personRoles } from "@steelyard/records/department";
import { runChart } from "@steelyard/study/run-chart";
import { render } from "preact-render-to-string";
import { describe, expect, it } from "vitest";
import { ProblemNote } from "../components/problem-note.tsx";
import { Inside } from "../department-app.tsx";
import { DepartmentContext } from "../state/department-context.ts";
import { type DepartmentScreenId, screensFor } from "../state/department-screens.ts";
import { type DepartmentState, emptyDepartment, type Person } from "../state/department-state.ts";
import { Charted } from "./accuracy/accuracy.tsx";
import { chartScale } from "./accuracy/chart-scale.ts";
import { RunChartFigure } from "./accuracy/run-chart-figure.tsx";
import { auditCsv } from "./audit/audit-csv.ts";
import { Fitted } from "./calibration/fit.tsx";
import { casesQuery } from "./casebook/cases.tsx";
import { LocalLink } from "./casebook/local-link.tsx";
import { Signing } from "./documents/signing.tsx";
import { linesOf } from "./formulary/read-formulary.tsx";

const person = (...roles: Person["roles"]): Person => ({
  id: "1",
  name: "Ada Quill",
  login: "ada",
  roles,
  site: "resus",
});
const stateOf = (
  one: Person,
  screen: DepartmentScreenId,
  more: Partial<DepartmentState> = {},
  isOver = false,
): DepartmentState => ({
  ...emptyDepartment,
  session: { state: "signed-in", person: one, csrf: "c", isOver },
  route: { screen, path: [] },
  ...more,
});
/** The words of the page, as they are read. */
const shown = (state: DepartmentState): string =>
  render(
    <DepartmentContext.Provider
      value={{ state, send: () => undefined, ask: () => new Promise(() => undefined) }}
    >
      <Inside state={state} onLook={() => undefined} />
    </DepartmentContext.Provider>,
  );

describe("the screens", () => {
  it.each(screensFor(personRoles))(
    "%s waits, fails with a way on, and keeps out who may not see it",
    (screen) => {
      expect(shown(stateOf(person(...personRoles), screen))).toMatch(/Loading\.|<form|<button/);
      const others = personRoles.filter((role) => !screensFor([role]).includes(screen));
      for (const role of others) expect(shown(stateOf(person(role), screen))).toContain("do not include");
    },
  );

  it("say that there is nobody, no case, no entry, no version, and why there is no answer", () => {
    const all = person(...personRoles);
    const ready = (value: unknown) => ({ state: "ready", value, isStale: false }) as const;
    expect(
      shown(stateOf(all, "cases", { answers: { "/api/cases?limit=50": ready({ cases: [] }) } })),
    ).toContain("No case is found");
    expect(
      shown(stateOf(all, "accuracy", { answers: { "/api/accuracy": ready({ points: [], more: false }) } })),
    ).toContain("No case of these days");
    expect(
      shown(stateOf(all, "audit", { answers: { "/api/audit?limit=50": ready({ entries: [] }) } })),
    ).toContain("No entry is found");
    const none = ready({ documents: [], publications: [] });
    expect(
      shown(stateOf(all, "formulary", { answers: { "/api/documents?kind=formulary": none } })),
    ).toContain("Nothing is in force");
    const failed = { state: "failed", problem: { type: "unreachable" } } as const;
    const away = shown(stateOf(all, "people", { answers: { "/api/people": failed } }));
    expect(away).toContain("does not answer");
    expect(away).toContain("Ask again");
  });

  it("hide what is on the screen when the session is over, and keep it there", () => {
    const html = shown(stateOf(person("administrator"), "people", {}, true));
    expect(html).toContain("Your session is over");
    expect(html).toMatch(/<div hidden[^>]*>.*Invite somebody/s);
  });

  it("lead the first one in by the code, and everybody to Bedside where there is no department", () => {
    expect(shown({ ...emptyDepartment, session: { state: "set-up" } })).toContain("Set-up code");
    const none = {
      ...emptyDepartment,
      session: { state: "failed", problem: { type: "no-records" } },
    } as const;
    expect(shown(none)).toMatch(/keeps no records.*go to Bedside/s);
  });
});

describe("LocalLink", () => {
  const caseId = "00000000-0000-4000-8000-000000000001";
  const said = (more: Partial<DepartmentState>, isOver = false): string =>
    render(
      <DepartmentContext.Provider
        value={{
          state: stateOf(person("clinician"), "cases", more, isOver),
          send: () => undefined,
          ask: () => new Promise(() => undefined),
        }}
      >
        <LocalLink caseId={caseId} />
      </DepartmentContext.Provider>,
    );
  const ready = (value: unknown) => ({
    answers: { [`/api/case/link?caseId=${caseId}`]: { state: "ready", value, isStale: false } as const },
  });
  const passphrase = { text: "larch seven otter", isProven: false };

  it("asks for the passphrase first, and says that nobody else can read the name or find a lost one", () => {
    const html = said(ready({ sealed: "1.AAAA.AAAA.AAAA" }));
    expect(html).toContain("Passphrase of the site");
    expect(html).toMatch(/cannot read it.*cannot be recovered/s);
    expect(html).not.toContain("1.AAAA");
    expect(html).toContain("screen-only");
  });

  it("wants a passphrase that has opened nothing yet a second time, and lets nobody replace what is shut", () => {
    const first = said({ passphrase, ...ready({}) });
    expect(first).toMatch(/Nothing is kept.*Passphrase once more.*Seal and keep/s);
    expect(said({ passphrase: { ...passphrase, isProven: true }, ...ready({}) })).not.toContain("once more");
    const shut = said({ passphrase, ...ready({ sealed: "1.AAAA.AAAA.AAAA" }) });
    expect(shut).toContain("Remove the name");
    expect(shut).not.toContain("Seal and replace");
    expect(shut).not.toContain("larch");
  });

  it("shows nothing at all behind the sign-in", () => {
    expect(said({ passphrase, ...ready({}) }, true)).toBe("");
  });
});

describe("OwnSessions", () => {
  it("marks the session that asks, and offers to end the others only", () => {
    const session = (id: string, isThis: boolean) => ({
      id,
      startedAt: "2026-11-25T03:12:00.000Z",
      usedAt: "2026-11-25T04:12:00.000Z",
      isThis,
    });
    const said = (...sessions: readonly unknown[]): string =>
      shown(
        stateOf(person("clinician"), "account", {
          answers: { "/api/sessions": { state: "ready", value: { sessions }, isStale: false } },
        }),
      );
    const alone = said(session("a", true));
    expect(alone).toMatch(/this one.*signed in nowhere else/s);
    expect(alone).not.toContain("End all others");
    const two = said(session("a", true), session("b", false));
    expect(two.match(/End the session that began/g)).toHaveLength(1);
    expect(two).toContain("Your password, to end a session");
  });
});

describe("Signing", () => {
  const document: DocumentEntry = {
    sha256: "a".repeat(64),
    kind: "formulary",
    label: "Ours",
    at: "2026-11-25T03:12:00.000Z",
    by: { id: "1", name: "Ada Quill" },
    signatures: [],
    needs: { signatures: 2, have: 0, because: ["potassium chloride"] },
    published: false,
    inForce: false,
  };
  const said = (one: Person, change: Partial<DocumentEntry> = {}): string =>
    render(<Signing document={{ ...document, ...change }} person={one} inForce={undefined} />);

  it("explains four eyes, and lets the writer not sign", () => {
    const html = said(person("reviewer"));
    expect(html).toContain("potassium chloride");
    expect(html).toContain("0 of 2 signatures needed");
    expect(html).toContain("others have to sign it");
    expect(html).not.toContain("Licence or registration");
  });

  it("lets another reviewer sign with password, registration and statement, and nobody else", () => {
    const other = { ...person("reviewer"), id: "2" };
    expect(said(other)).toContain("Licence or registration");
    expect(said({ ...person("administrator"), id: "2" })).toContain("Only a licensed reviewer can sign");
  });

  it("publishes what has its signatures, rolls back what was in force, and nothing else", () => {
    const signed = { ...document, needs: { ...document.needs, have: 2 } };
    expect(said(person("reviewer"))).toContain("lacks signatures");
    expect(said(person("administrator"), signed)).toContain(">Publish<");
    expect(said(person("administrator"), { ...signed, published: true })).toContain("Roll back");
    expect(said(person("clinician"), signed)).toContain("A reviewer or an administrator");
  });
});

describe("the parts", () => {
  it("a refusal shows its faults, and a server's unknown word its reason", () => {
    const faults = [{ place: "adrenaline", message: "is too much" }];
    const html = render(
      <ProblemNote problem={{ type: "refused", status: 422, problem: "faulty-document", faults }} />,
    );
    expect(html).toMatch(/these faults.*is too much/s);
    const unknown = { type: "refused", status: 400, problem: "malformed", reason: "body name" } as const;
    expect(render(<ProblemNote problem={unknown} />)).toContain("body name");
  });

  it("a chart marks what lies outside by its shape, and holds every value on its scale", () => {
    const values = [...Array.from({ length: 24 }, (_, i) => (i % 2 === 0 ? 2 : -2)), 40];
    const html = render(<RunChartFigure chart={runChart(values)} />);
    // One in the chart and one in its key.
    expect(html.match(/run-chart__outside/g)?.length).toBe(2);
    const scale = chartScale(values);
    expect(scale.from).toBeLessThanOrEqual(-2);
    expect(scale.to).toBeGreaterThanOrEqual(40);
    expect(scale.ticks).toContain(0);
  });

  it("the log as CSV quotes what needs it and hands no formula to a spreadsheet", () => {
    const entry = {
      position: 7,
      at: "2026-11-25T03:12:00.000Z",
      actor: "person:1",
      actorName: "=HYPERLINK(1)",
      action: "case.read",
      subject: 'a,"b"',
      detail: { rows: 2 },
    };
    const [head, line] = auditCsv([entry]).split("\r\n");
    expect(head).toBe("position,at,actor,actor_name,action,subject,detail");
    expect(line).toBe(
      '7,2026-11-25T03:12:00.000Z,person:1,\'=HYPERLINK(1),case.read,"a,""b""","{""rows"":2}"',
    );
  });
});

describe("what is shown of cases and fits", () => {
  it("names each case with its signal in the table, and counts the signals in words", () => {
    const points = Array.from({ length: 25 }, (_, i) => ({
      caseId: `00000000-0000-4000-8000-0000000000${10 + i}`,
      code: `K${i}`,
      at: "2026-11-25T03:12:00.000Z",
      estimateKg: 10,
      measuredKg: 10,
      daysAfter: 0,
      errorPercent: i === 20 ? 45 : i % 2 === 0 ? 2 : -2,
    }));
    const html = render(<Charted points={points} />);
    expect(html).toContain("1 case lies outside the limits.");
    expect(html).toMatch(/K20<\/a>.*?outside the limits/s);
    const few = points.slice(0, 3).map(({ caseId: _, code: __, at: ___, ...rest }) => rest);
    expect(render(<Charted points={points.slice(0, 3)} />)).toContain("from 20 cases on");
    const bare = render(<Charted points={few} />);
    expect(bare).toContain("order by chance");
    expect(bare).not.toMatch(/limits? [−-]|<svg|signal|Start/);
    expect(bare).not.toContain("href");
  });

  it("says of a calibration what it does not show", () => {
    const side = {
      meanErrorPercent: 1,
      rmspe: 9,
      within10Percent: 70,
      within20Percent: 95,
      coveragePercent: 90,
    };
    const fitted: FitAnswer = {
      content: "{}",
      label: "Resus",
      rows: 40,
      leftOut: [{ reason: "no length", rows: 2 }],
      more: true,
      shiftWithinPercent: 2,
      childrenForOnePercent: 200,
    };
    expect(render(<Fitted fitted={fitted} />)).toContain("Do not publish it on this");
    const judged = (low: number): string =>
      render(
        <Fitted
          fitted={{
            ...fitted,
            accuracy: { before: side, after: side, within10Gain: { value: 3, low, high: 9 } },
          }}
        />,
      );
    expect(judged(-1)).toContain("holds no gain");
    expect(judged(0.5)).not.toContain("holds no gain");
  });

  it("asks for a code in capitals and without blanks", () => {
    const query = casesQuery({ from: "", to: "", state: "", due: "", code: " k47-2tp " }, undefined);
    expect(query).toMatchObject({ code: "K47-2TP", limit: "50" });
  });

  it("writes out every medicine to be read, its own and nothing of another, without marks", () => {
    for (const { id, uses } of draftFormulary.medicines) {
      const lines = linesOf(draftFormulary, id);
      expect(lines[0]?.text).toBe(`Id ${id}`);
      expect(
        lines.filter(({ kind }) => kind === "use"),
        id,
      ).toHaveLength(uses.length);
      expect(
        lines.some(({ text }) => /\*\*|`/.test(text)),
        id,
      ).toBe(false);
    }
  });
});
