/** The sealed name beside a case. */
export const linkEn = {
  title: "Name or number beside this case",
  about:
    "Sealed and opened on this page, with a passphrase that your site keeps to itself. The server has neither the passphrase nor the name and cannot read it. A lost passphrase cannot be recovered: names sealed with it stay shut for everybody.",
  passphrase: "Passphrase of the site",
  passphraseHint:
    "Not your password. Kept in this page only, until you sign out, press Forget, or leave the page alone for five minutes.",
  unlock: "Unlock",
  forget: "Forget the passphrase",
  opening: "Opening.",
  wrong:
    "This passphrase does not open the name of this case. Forget it and try another; the name stays as it is.",
  none: "Nothing is kept beside this case.",
  field: "Name or number beside this case (sealed on this page)",
  fieldHint: "Up to 200 characters. It is in no export, print or log.",
  again: "Passphrase once more",
  againHint: "It has not opened a name here yet. Mistyped, it would seal this one for good.",
  differs: "The two passphrases differ. Forget the first one if it was mistyped.",
  short: "12 characters or more: whoever has a copy of the database can try passphrases.",
  missing: "This is needed.",
  seal: "Seal and keep",
  replace: "Seal and replace",
  kept: "Sealed and kept.",
  remove: "Remove the name",
  removeAsk: "The sealed name of this case is deleted on the server for everybody.",
  removeYes: "Delete it",
  removed: "The name is deleted.",
  noCrypto: "This browser cannot seal or open names here: the page must be loaded over HTTPS.",
};
