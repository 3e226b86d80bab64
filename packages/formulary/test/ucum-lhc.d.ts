/** The part of the library that the checks use; it ships no types of its own. */
declare module "@lhncbc/ucum-lhc" {
  interface Utils {
    validateUnitString(unit: string): { readonly status: "valid" | "invalid" | "error" };
    convertUnitTo(
      from: string,
      amount: number,
      to: string,
    ): { readonly status: "succeeded" | "failed" | "error"; readonly toVal: number | null };
  }
  export const UcumLhcUtils: { getInstance(): Utils };
}
