import { beginAttempt, forgiveAttempt } from "../../store/people/attempts.ts";
import {
  addChallenge,
  addPasskey,
  findPasskey,
  listPasskeys,
  removePasskey,
  takeChallenge,
  usePasskey,
} from "../../store/people/passkeys.ts";
import type { AccountsParts, PasskeyRecords } from "./accounts.ts";
import { attemptDelayMs } from "./attempt-delay.ts";

export function createPasskeyRecords({ store: { db, clock } }: AccountsParts): PasskeyRecords {
  const subjects = (address: string) => [{ kind: "address", name: address }] as const;
  return {
    list: (person) => listPasskeys(db, person),
    find: (credentialId) => findPasskey(db, credentialId),
    add: (order) => addPasskey(db, clock, order),
    use: (order) => usePasskey(db, clock, order),
    remove: (order) => removePasskey(db, clock, order),
    addChallenge: (challenge) => addChallenge(db, clock, challenge),
    takeChallenge: (by) => takeChallenge(db, clock, by),
    tryFrom: (address) => beginAttempt(db, clock, { subjects: subjects(address), delayMs: attemptDelayMs }),
    forgive: (address) => forgiveAttempt(db, subjects(address)),
  };
}
