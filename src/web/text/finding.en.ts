export const FINDING_EN = {};
