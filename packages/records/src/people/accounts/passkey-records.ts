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

export function createPasskeyRecords({ store: { db, clock } }: AccountsParts): PasskeyRecords {
  return {
    list: (person) => listPasskeys(db, person),
    find: (credentialId) => findPasskey(db, credentialId),
    add: (order) => addPasskey(db, clock, order),
    use: (order) => usePasskey(db, clock, order),
    remove: (order) => removePasskey(db, clock, order),
    addChallenge: (challenge) => addChallenge(db, clock, challenge),
    takeChallenge: (by) => takeChallenge(db, clock, by),
  };
}
