/** Words of register. */
export const registerEn = {
  title: "",
};
