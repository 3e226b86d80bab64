import type { StoredSiteProfile } from "@steelyard/core/body";

const key = "steelyard.site";

/**
 * Keeps the calibration of this device for good, or takes it off; false where the browser refuses, so that the person is told that it is
 * gone with the page.
 */
export function keepSite(site: StoredSiteProfile | undefined): boolean {
  try {
    if (site === undefined) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(site));
    return true;
  } catch {
    return false;
  }
}

/** What `keepSite` kept: it was read by `readSiteProfile` before, and is trusted like the page itself. */
export function findSite(): StoredSiteProfile | undefined {
  try {
    return (JSON.parse(localStorage.getItem(key) ?? "null") as StoredSiteProfile | null) ?? undefined;
  } catch {
    return undefined;
  }
}
