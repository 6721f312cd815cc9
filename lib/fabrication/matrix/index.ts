export * from './assess'
export { findDecidingRows } from './conditions'
export * from './content'
export {
  describeConditions,
  formatParameterLimit,
  formatParameterValue,
} from './describe'
export { findChoice, findParameter, TRADE_PARAMETERS } from './dictionary'

export type { TradeParameter } from './parameter'
export { findMatrixIssues, findRowIssues } from './problems'
export { type MatrixRow, matrixRowSchema } from './row'
export * from './verdict'
