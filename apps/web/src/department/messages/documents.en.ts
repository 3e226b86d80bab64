/** Words of documents. */
export const documentsEn = {
  title: "",
};
