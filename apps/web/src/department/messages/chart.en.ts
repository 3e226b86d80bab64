/** Words of chart. */
export const chartEn = {
  title: "",
};
