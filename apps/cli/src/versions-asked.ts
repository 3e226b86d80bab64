/** Thrown where the option --version stands: versions are in what is loaded only when they are asked for. */
export class VersionsAsked extends Error {}
