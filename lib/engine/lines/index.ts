export {
  type Coupling,
  findDistanceUm,
  findLeast,
  findWidthMm,
  solveCoupling,
  solveRange,
  solveRoughly,
} from './line-impedance'
export { describeZoneLine, ETCHED_WIDTH_CAUTION, findFieldAcrossUm, type ZoneLine } from './zone-line'
