export {
  digitsOfFoilWeight,
  foilThicknessUm,
  foilWeightOzPerFt2,
  parseFoilThickness,
} from './copper-weight'
export {
  asComputed,
  asCount,
  asDeviation,
  asEntered,
  asFileSize,
  asResult,
  type ComputedFigure,
  countOf,
  digitsAsComputed,
  digitsAsEntered,
  digitsOfResult,
  digitsOfTick,
  inSentence,
  NO_FIGURE,
  NUMBER_ENTRY_FORMAT,
  withSign,
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
export { parseNumber, withHyphen } from './parse-number'
export { getUnitSymbol, type Unit, withUnit, withUnitInHead } from './unit'
export { capitalise } from './words'
