export const DRAWING_EN = {};
