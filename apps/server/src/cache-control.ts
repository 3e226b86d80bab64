const oneYearS = 365 * 24 * 60 * 60;

/**
 * How long a file may be kept. Files under `assets/` carry a hash of their content in the name and never
 * change; everything else (page, service worker, manifest, icons) is asked for again each time.
 */
export function cacheControl(path: string): string {
  return path.startsWith("/assets/") ? `public, max-age=${oneYearS}, immutable` : "no-cache";
}
