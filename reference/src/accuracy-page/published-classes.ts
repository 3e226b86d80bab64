/** What was published on a class of methods: shares as printed. */
export interface PublishedClass {
  readonly method: string;
  readonly within10: string;
  readonly within20: string;
  readonly sourceId: string;
  /** How the figures themselves were had. */
  readonly verification: "read" | "memory";
}

/** Published accuracy per class of method; no product is named. */
export const publishedClasses: readonly PublishedClass[] = [
  {
    method: "length and build, pooled, two methods",
    within10: "70.9 and 78.0",
    within20: "95.3 and 96.6",
    sourceId: "wells2017",
    verification: "read",
  },
  {
    method: "the carer's word, pooled",
    within10: "69.8",
    within20: "87.1",
    sourceId: "wells2017",
    verification: "read",
  },
  {
    method: "length alone by tape, pooled",
    within10: "55.6",
    within20: "81.2",
    sourceId: "wells2017",
    verification: "read",
  },
  {
    method: "formulas by age",
    within10: "25 to 45",
    within20: "50 to 70",
    sourceId: "wells2017",
    verification: "memory",
  },
  {
    method: "length and build, low- and middle-income countries",
    within10: "71.4 to 86.9",
    within20: "–",
    sourceId: "wells2017-developing",
    verification: "read",
  },
  {
    method: "the carer's word, low- and middle-income countries",
    within10: "80.4",
    within20: "–",
    sourceId: "wells2017-developing",
    verification: "read",
  },
  {
    method: "the carer's word, one Australian emergency department, 410 children of 1 to 11 years",
    within10: "78",
    within20: "–",
    sourceId: "carer-weight-2007",
    verification: "read",
  },
  {
    method: "length alone, the same department",
    within10: "61",
    within20: "–",
    sourceId: "carer-weight-2007",
    verification: "read",
  },
  {
    method: "height and build by eye in three words, machine learning, 780 children",
    within10: "74.7",
    within20: "96.7",
    sourceId: "build-by-eye-2025",
    verification: "read",
  },
  {
    method: "ulna and a girth or width of the forearm, 457 children under 6 years",
    within10: "72 to 87",
    within20: "95 to 99",
    sourceId: "zhu-forearm",
    verification: "read",
  },
  {
    method: "head and chest circumference, 416 infants",
    within10: "84",
    within20: "–",
    sourceId: "head-chest-infants-2017",
    verification: "read",
  },
];

/** The least a method should reach: within 10 % more than 70 % of the children, within 20 % more than 95 %. @source wells2017 */
export const proposedMinimum = { within10: 70, within20: 95 } as const;

/**
 * Mean overestimate of children below -3 z of weight for length, %, by a regression on height and by two length-only tapes (the
 * paper's sign turned round). @source ralston2016, table 2
 */
export const publishedOverestimates = { height: 21.63, tapes: [31.08, 36.81] } as const;
