export {
  findDistanceUm,
  findWidthMm,
  type LineRange,
  type SolvedLine,
  solveRange,
  solveRoughly,
} from './line-impedance'
export { describeZoneLine, ETCHED_WIDTH_CAUTION, type ZoneLine } from './zone-line'
