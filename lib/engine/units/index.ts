export {
  arealMassGPerM2,
  digitsOfFoilWeight,
  foilThicknessByDensityUm,
  foilThicknessUm,
  foilWeightOzPerFt2,
  parseFoilThickness,
} from './copper-weight'
export {
  asComputed,
  asCount,
  asEntered,
  asFileSize,
  asResult,
  type ComputedFigure,
  digitsAsComputed,
  digitsAsEntered,
  digitsOfResult,
  digitsOfTick,
  inSentence,
  NO_FIGURE,
  NUMBER_ENTRY_FORMAT,
} from './figures'
export {
  convertEnteredLength,
  DISPLAY_LENGTH_UNITS,
  type DisplayLengthUnit,
  digitsOfEnteredLength,
  digitsOfLength,
  digitsOfRadius,
  digitsOfResultLength,
  findLengthUnit,
  formatEnteredLength,
  formatLength,
  getShownUnit,
  keptLength,
  type LengthUnit,
  lengthFromUm,
  parseLength,
  umFromLength,
} from './length'
export { gpaFromPsi, psiFromGpa } from './modulus'
export { getUnitSymbol, type Unit, withUnit, withUnitInHead } from './unit'
