/** What the command ends with: part of its contract. */
export const EXIT = { done: 0, notServed: 1, wrongUsage: 2 } as const;

/** Ends the command with a message for the person at the keyboard and a status of `EXIT`. */
export class CommandFailure extends Error {
  readonly status: number;

  constructor(status: number, message: string) {
    super(message);
    this.status = status;
  }
}
