/** Text of the layer sheet that cannot be read keeps the draft from being saved, under this key. */
export const SHEET_MISREAD = 'layer-sheet'
