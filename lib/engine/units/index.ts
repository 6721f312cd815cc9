export {
  arealMassGPerM2,
  foilThicknessByDensityUm,
  foilThicknessUm,
  foilWeightOzPerFt2,
  UM_PER_OZ_PER_FT2,
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
  DISPLAY_LENGTH_UNITS,
  digitsOfEnteredLength,
  digitsOfLength,
  digitsOfResultLength,
  formatEnteredLength,
  formatLength,
  getShownUnit,
  type LengthKind,
  type LengthUnit,
  lengthFromUm,
  type ParsedLength,
  parseLength,
  umFromLength,
} from './length'
export { gpaFromPsi, psiFromGpa } from './modulus'
export { getUnitSymbol, type Unit, withUnit, withUnitInHead } from './unit'
