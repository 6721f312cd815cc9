export {
  arealMassGPerM2,
  foilThicknessByDensityUm,
  foilThicknessUm,
  foilWeightOzPerFt2,
  UM_PER_OZ_PER_FT2,
} from './copper-weight'
export {
  DISPLAY_LENGTH_UNITS,
  formatLength,
  type LengthUnit,
  lengthFromUm,
  type ParsedLength,
  parseLength,
  umFromLength,
} from './length'
export { gpaFromPsi, psiFromGpa } from './modulus'
