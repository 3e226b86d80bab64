import { type Days, type Months, months } from "../units/index.ts";
import { monthsToDays } from "./age.ts";
import type { GrowthStandard } from "./growth-standard.ts";
import type { Lms } from "./lms.ts";

/**
 * One standard by age in months from WHO 2006, which ends at 1826 days (59.99 months), and WHO 2007, which
 * begins at 61 months. In the gap L, M and S go in a straight line from the last row to the first.
 */
export function joinGrowthStandards<Value extends number>({
  id,
  under5,
  from5,
}: {
  readonly id: string;
  readonly under5: GrowthStandard<Days, Value>;
  readonly from5: GrowthStandard<Months, Value>;
}): GrowthStandard<Months, Value> {
  return {
    ...from5,
    id,
    sourceIds: [...under5.sourceIds, ...from5.sourceIds],
    acknowledgement: `${under5.acknowledgement} ${from5.acknowledgement}`,
    index: { ...from5.index, low: months(0) },
    value: under5.value,
    lms: ({ sex, at }): Lms => {
      if (at >= from5.index.low) return from5.lms({ sex, at });
      const ageDays = monthsToDays(at);
      if (ageDays <= under5.index.high) return under5.lms({ sex, at: ageDays });
      const first = under5.lms({ sex, at: under5.index.high });
      const last = from5.lms({ sex, at: from5.index.low });
      const share = (ageDays - under5.index.high) / (monthsToDays(from5.index.low) - under5.index.high);
      const between = (name: keyof Lms) => first[name] + share * (last[name] - first[name]);
      return { l: between("l"), m: between("m"), s: between("s") };
    },
  };
}
