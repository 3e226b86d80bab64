export { type PooledEffect, type PoolOptions, poolEffects } from "./pool-effects.ts";
export { type PooledFigure, type PooledMethod, poolSites, type SiteFigure } from "./pool-sites.ts";
export { readSiteSummary, type SiteSummaryIssue } from "./read-site-summary.ts";
export { type MethodSummary, type SiteSummary, summariseSite } from "./site-summary.ts";
export type { StudyEffect } from "./study-effect.ts";
