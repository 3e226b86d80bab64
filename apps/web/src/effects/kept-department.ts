export const departmentKey = "steelyard.department";

/** What the device knows of its department's server: its token, and how far it has pulled in which life of the store. */
export interface KeptDepartment {
  readonly token: string;
  /** Made anew with each link, so that nothing is remembered past it; absent in links of earlier versions. */
  readonly link?: string;
  readonly epoch?: string;
  readonly cursor?: number;
  /** The calibration in use is the department's; its hash. */
  readonly calibration?: string;
}

export function findDepartment(): KeptDepartment | undefined {
  try {
    const kept = JSON.parse(localStorage.getItem(departmentKey) ?? "null") as Partial<KeptDepartment> | null;
    return typeof kept?.token === "string" ? { ...kept, token: kept.token } : undefined;
  } catch {
    return undefined;
  }
}

/** Kept for good, or taken off. A browser that refuses asks for the token again after the next start. */
export function keepDepartment(kept: KeptDepartment | undefined): void {
  try {
    if (kept === undefined) localStorage.removeItem(departmentKey);
    else localStorage.setItem(departmentKey, JSON.stringify(kept));
  } catch {
    // Storage is refused; the link holds as long as the page is open.
  }
}
