/** Version of the exchange between device and server; a server refuses one that it does not know, and says which it knows. */
export const syncProtocol = 1;

/** Events in one push: well under the limit of a body, and a commit that takes milliseconds. */
export const longestPush = 200;

/** Changes in one answer. */
export const longestPull = 500;
