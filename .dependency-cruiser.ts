// Who may import whom. Every rule here is planted and seen caught in test/boundaries.test.ts; CONTRIBUTING.md
// says in words what the arrows are. Tests may reach further than the code beside them, so rules about
// sources leave test files out.

import type { DependencyType, IConfiguration } from "dependency-cruiser";

const tests = "(\\.test\\.tsx?$|/test/)";
const thirdParty: DependencyType[] = [
  "npm",
  "npm-dev",
  "npm-optional",
  "npm-peer",
  "npm-no-pkg",
  "npm-unknown",
];

const config: IConfiguration = {
  forbidden: [
    {
      name: "no-cycles",
      comment: "Two files that need each other, be it only for a type, are one file or want a third.",
      severity: "error",
      from: {},
      to: { circular: true },
    },
    {
      name: "no-unresolved-or-deep-import",
      comment:
        "Another package is reached through its export map only; a path past the map does not resolve.",
      severity: "error",
      from: {},
      to: { couldNotResolve: true },
    },
    {
      name: "no-relative-import-of-another-package",
      comment: "A relative path into another workspace walks round its export map.",
      severity: "error",
      from: { path: "^((?:packages|apps)/[^/]+|reference)/" },
      to: {
        path: "^(packages|apps|reference)/",
        pathNot: "^$1/",
        dependencyTypes: ["local"],
      },
    },
    {
      name: "core-has-no-third-party-code",
      comment: "A clinical reviewer can read all of core.",
      severity: "error",
      from: { path: "^packages/core/", pathNot: tests },
      to: { dependencyTypes: thirdParty, pathNot: "^(packages|apps|reference)/" },
    },
    {
      name: "formulary-third-party-is-valibot",
      comment: "The formulary needs a schema library and nothing else.",
      severity: "error",
      from: { path: "^packages/formulary/", pathNot: tests },
      to: { dependencyTypes: thirdParty, pathNot: "(^(packages|apps|reference)/|/valibot/)" },
    },
    {
      name: "paper-third-party-is-three",
      comment: "Paper needs a PDF library, a font reader and a QR encoder, each behind one file.",
      severity: "error",
      from: { path: "^packages/paper/", pathNot: tests },
      to: {
        dependencyTypes: thirdParty,
        pathNot: "(^(packages|apps|reference)/|/(pdfkit|fontkit|lean-qr)/)",
      },
    },
    {
      name: "case-third-party-is-two",
      comment:
        "Cases need a schema library and a CSV reader; drivers and the like stay out of the pure part.",
      severity: "error",
      from: { path: "^packages/records/src/case/", pathNot: tests },
      to: {
        dependencyTypes: thirdParty,
        pathNot: "(^(packages|apps|reference)/|/(valibot|papaparse|@types/papaparse)/)",
      },
    },
    {
      name: "records-imports-core-only",
      comment:
        "core <- records <- apps: arrows point inward only; what is signed is read by the formulary's own reader.",
      severity: "error",
      from: { path: "^packages/records/(?!src/documents/)", pathNot: tests },
      to: { path: "^packages/", pathNot: "^packages/(core|records)/" },
    },
    {
      name: "documents-import-core-and-formulary-only",
      comment:
        "What a site signs is a formulary or a calibration, and nothing of the platform is needed to read it.",
      severity: "error",
      from: { path: "^packages/records/src/documents/", pathNot: tests },
      to: { path: "^packages/", pathNot: "^packages/(core|formulary|records)/" },
    },
    {
      name: "case-touches-no-platform",
      comment: "A case is a fold over its events: no files, no network, no process.",
      severity: "error",
      from: { path: "^packages/records/src/case/", pathNot: tests },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "store-third-party-is-three",
      comment: "The store needs a query builder, one driver and a schema library.",
      severity: "error",
      from: { path: "^packages/records/src/(store|sync|settings|department)/", pathNot: tests },
      to: {
        dependencyTypes: thirdParty,
        pathNot: "(^(packages|apps|reference)/|/(kysely|pg|@types/pg|valibot)/)",
      },
    },
    {
      name: "people-third-party-is-one",
      comment: "Passwords need a judge of the common ones; hashing is the platform's.",
      severity: "error",
      from: { path: "^packages/records/src/people/", pathNot: tests },
      to: {
        dependencyTypes: thirdParty,
        pathNot: "(^(packages|apps|reference)/|/@zxcvbn-ts/)",
      },
    },
    {
      name: "only-dialects-touch-a-driver",
      comment: "What differs between engines lies in one folder each; the rest of the store is one code.",
      severity: "error",
      from: { path: "^packages/records/src/", pathNot: ["/store/dialect/", tests] },
      to: { path: "(^node:sqlite$|^sqlite$|/pg/|/@types/pg/)" },
    },
    {
      name: "device-touches-no-platform",
      comment:
        "The outbox and what a department says run on the page: no files, no network, no process, no store.",
      severity: "error",
      from: {
        path: "^packages/records/src/(sync/(device|wire)|settings|department|documents)/",
        pathNot: tests,
      },
      to: { path: "^packages/records/src/store/|^node:", reachable: true },
    },
    {
      name: "pure-packages-touch-no-platform",
      comment:
        "core, formulary, paper and study compute: no files, no network, no process. Adapters live in apps.",
      severity: "error",
      from: { path: "^packages/(core|formulary|paper|study)/", pathNot: tests },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "core-imports-no-other-package",
      comment: "core <- formulary <- apps: arrows point inward only.",
      severity: "error",
      from: { path: "^packages/core/", pathNot: tests },
      to: { path: "^packages/", pathNot: "^packages/core/" },
    },
    {
      name: "formulary-imports-core-only",
      comment: "core <- formulary <- apps: arrows point inward only.",
      severity: "error",
      from: { path: "^packages/formulary/", pathNot: tests },
      to: { path: "^packages/", pathNot: "^packages/(core|formulary)/" },
    },
    {
      name: "paper-imports-core-and-formulary-only",
      comment: "core <- formulary <- paper <- apps: arrows point inward only.",
      severity: "error",
      from: { path: "^packages/paper/", pathNot: tests },
      to: { path: "^packages/", pathNot: "^packages/(core|formulary|paper)/" },
    },
    {
      name: "study-imports-core-formulary-and-paper-only",
      comment: "core <- formulary <- paper <- study <- apps: arrows point inward only.",
      severity: "error",
      from: { path: "^packages/study/", pathNot: tests },
      to: { path: "^packages/", pathNot: "^packages/(core|formulary|paper|study)/" },
    },
    {
      name: "body-never-reaches-dosing",
      comment: "The body model knows nothing of medicines, not even by way of a third folder.",
      severity: "error",
      from: { path: "^packages/core/src/body/", pathNot: tests },
      to: { path: "^packages/core/src/dosing/", reachable: true },
    },
    {
      name: "dosing-never-reaches-body",
      comment: "Dosing takes a weight, whoever made it.",
      severity: "error",
      from: { path: "^packages/core/src/dosing/", pathNot: tests },
      to: { path: "^packages/core/src/body/", reachable: true },
    },
    {
      name: "only-child-and-wording-join",
      comment: "child joins body and dosing, wording words both, entry makes measurements of what was typed.",
      severity: "error",
      from: { path: "^packages/core/src/", pathNot: ["/src/(child|wording|entry|body|dosing)/", tests] },
      to: { path: "^packages/core/src/(body|dosing)/" },
    },
    {
      name: "entry-knows-no-dosing",
      comment: "What was typed about a child has nothing to do with medicines.",
      severity: "error",
      from: { path: "^packages/core/src/entry/", pathNot: tests },
      to: { path: "^packages/core/src/dosing/" },
    },
    {
      name: "apps-never-import-each-other",
      comment: "What two apps share belongs in a package.",
      severity: "error",
      from: { path: "^apps/([^/]+)/" },
      to: { path: "^apps/", pathNot: "^apps/$1/" },
    },
    {
      name: "libraries-never-import-apps",
      comment: "Arrows point inward only.",
      severity: "error",
      from: { path: "^(packages|reference)/" },
      to: { path: "^apps/" },
    },
    {
      name: "reference-imports-core-only",
      comment:
        "The fit stands beside the product: it knows the model, the reader of SAS files and the plain formulas, and nothing of doses or screens.",
      severity: "error",
      from: { path: "^reference/", pathNot: tests },
      to: { path: "^packages/", pathNot: "^packages/(core|study/src/(transport|formulas))/" },
    },
    {
      name: "nothing-imports-reference",
      comment: "The product runs on the coefficients, never on the fit or its data.",
      severity: "error",
      from: { path: "^(packages|apps)/" },
      to: { path: "^reference/" },
    },
    {
      name: "web-components-have-no-effects",
      comment: "A component is a function of its props; effects and storage are called from state.",
      severity: "error",
      from: { path: "^apps/web/src/components?/", pathNot: tests },
      to: { path: "^apps/web/src/(effects?|storage)(/|\\.)" },
    },
  ],
  options: {
    // Type-only imports are arrows too.
    tsPreCompilationDeps: true,
    doNotFollow: { path: "node_modules" },
    exclude: { path: "(^|/)(dist|coverage)/" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "node", "default", "types"],
      extensions: [".ts", ".tsx", ".d.ts", ".mjs", ".js", ".json"],
    },
  },
};

export default config;
