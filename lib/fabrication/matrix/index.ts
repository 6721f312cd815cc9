export * from './assess'
export { type Circumstances, findDecidingRows } from './conditions'
export * from './content'
export {
  describeConditions,
  formatParameterLimit,
  formatParameterValue,
} from './describe'
export { findChoice, findParameter, TRADE_PARAMETERS } from './dictionary'

export type {
  LocatedValue,
  Measured,
  Measurement,
  ParameterUnit,
  TradeParameter,
} from './parameter'
export { findMatrixIssues, findRowIssues, type RowIssue } from './problems'
export { type MatrixRow, matrixRowSchema } from './row'
export * from './verdict'
