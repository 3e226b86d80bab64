/** A value while it is being made, before it is handed out as what it is. */
export type Writable<T> = { -readonly [K in keyof T]: T[K] };
