export {
  findDistanceUm,
  findWidthMm,
  solveRange,
  solveRoughly,
} from './line-impedance'
export { describeZoneLine, ETCHED_WIDTH_CAUTION, type ZoneLine } from './zone-line'
