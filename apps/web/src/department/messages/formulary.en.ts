/** Words of formulary. */
export const formularyEn = {
  title: "",
};
