import manifest from "../package.json" with { type: "json" };

export const SOFTWARE_VERSION: string = manifest.version;
