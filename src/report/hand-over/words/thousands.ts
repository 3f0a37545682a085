/** Whole numbers of five figures and more in groups of three. */
export const thousands = (whole: string, mark: string): string =>
  whole.length < 5 ? whole : whole.replace(/\B(?=(\d{3})+$)/g, mark);
