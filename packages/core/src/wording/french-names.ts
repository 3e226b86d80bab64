import type { EntryField } from "../entry/index.ts";
import type { FieldName } from "./message-catalogue.ts";

interface Noun {
  readonly name: string;
  /** With its article, and with "de" before that. */
  readonly the: string;
  readonly of: string;
  readonly isFeminine: boolean;
}

const feminine = (name: string): Noun => ({
  name,
  the: `la ${name}`,
  of: `de la ${name}`,
  isFeminine: true,
});
const masculine = (name: string): Noun => ({ name, the: `le ${name}`, of: `du ${name}`, isFeminine: false });
/** Before a vowel the article loses its own. */
const elided = (name: string, isFeminine = false): Noun => ({
  name,
  the: `l’${name}`,
  of: `de l’${name}`,
  isFeminine,
});

/** The fields of the entry as French nouns: their gender decides the words around them. */
export const FRENCH_FIELD: Readonly<Record<FieldName, Noun>> = {
  lengthCm: feminine("longueur couchée"),
  standingHeightCm: feminine("taille debout"),
  armMm: masculine("périmètre brachial"),
  waistCm: masculine("tour de taille"),
  thighCm: masculine("périmètre de cuisse"),
  calfCm: masculine("périmètre de mollet"),
  headCm: masculine("périmètre crânien"),
  ageMonths: elided("âge"),
  carerKg: masculine("poids indiqué par l’accompagnant"),
  scaleKg: masculine("poids lu sur la balance"),
  sex: masculine("sexe"),
  posture: feminine("position"),
  build: feminine("corpulence"),
  people: masculine("nombre de personnes qui mesurent"),
  lengthReadings: masculine("nombre de lectures de la longueur"),
  ulnaCm: feminine("longueur de l’ulna"),
  kneeHeightCm: feminine("hauteur du genou"),
  tibiaCm: feminine("longueur du tibia"),
  armStepMm: feminine("graduation du mètre ruban"),
  armReadings: masculine("nombre de lectures du périmètre brachial"),
  earlier: masculine("poids antérieur"),
  earlierKg: masculine("poids antérieur"),
  earlierAgeMonths: elided("âge au poids antérieur"),
  missingLimb: masculine("membre manquant"),
  oedema: masculine("œdème"),
  pregnant: feminine("grossesse"),
};

/** What to enter instead, after "saisissez". */
export const FRENCH_EXAMPLE: Readonly<Partial<Record<EntryField, string>>> = {
  lengthCm: "la longueur en cm, par exemple 136",
  standingHeightCm: "la taille debout en cm, par exemple 135",
  ulnaCm: "la longueur de l’ulna en cm, par exemple 19",
  kneeHeightCm: "la hauteur du genou en cm, par exemple 40",
  tibiaCm: "la longueur du tibia en cm, par exemple 31",
  armMm: "le périmètre brachial en mm, par exemple 190",
  waistCm: "le tour de taille en cm, par exemple 56",
  thighCm: "le périmètre de cuisse en cm, par exemple 35",
  calfCm: "le périmètre de mollet en cm, par exemple 26",
  headCm: "le périmètre crânien en cm, par exemple 44",
  ageMonths: "l’âge avec son unité, par exemple 9\u00a0ans ou 18\u00a0mois",
  carerKg: "le poids en kg, par exemple 28",
  earlierKg: "le poids en kg, par exemple 25",
  earlierAgeMonths: "l’âge avec son unité, par exemple 8\u00a0ans ou 16\u00a0mois",
  scaleKg: "le poids en kg, par exemple 28",
};
