const core = /packages\/core\/src\/(?:units|entry|body)\//;
const ofLaterScreens =
  /\/(?:calibrate|score|stored|read-site|write-site|student-quantile|recognise|slip|next-|measurement-density|read-fields|read-measurement-errors|shift|rational|convert|proposal-of|write-label|format-concentration)/;
const others = [
  /\/preact\//,
  /core\/src\/wording\/(?:english|write-value|value-words|say|describe-proposals)\.ts$/,
  /core\/src\/growth\/reference\/who-20(?:06-weight-for-length|07)/,
  /apps\/web\/src\/(?:messages\/(?:en|index|language)\.ts$|components\/quantity\/)/,
];

/**
 * Whether a module belongs into the one part that the first screen and all others share. Left to itself the bundler cuts that into ten,
 * which costs two kilobytes and ten questions to a slow phone's storage. A module too many here shows in the budget.
 */
export function isOfFirstScreen(id: string): boolean {
  return (core.test(id) && !ofLaterScreens.test(id)) || others.some((pattern) => pattern.test(id));
}
