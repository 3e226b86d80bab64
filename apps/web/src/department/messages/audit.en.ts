/** Words of audit. */
export const auditEn = {
  title: "",
};
