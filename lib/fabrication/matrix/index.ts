export * from './assess'
export { type Circumstances, countConditions, findDecidingRows, matchesConditions } from './conditions'
export * from './content'
export {
  describeConditions,
  formatParameterLimit,
  formatParameterNumber,
  formatParameterValue,
} from './describe'
export { findChoice, findParameter, TRADE_PARAMETERS } from './dictionary'
export { nameMaterial } from './material-parameters'
export {
  type LocatedValue,
  type Measured,
  type Measurement,
  PARAMETER_GROUPS,
  type ParameterUnit,
  type TradeParameter,
} from './parameter'
export { findMatrixIssues, findRowIssues, type RowIssue } from './problems'
export { type MatrixRow, matrixRowSchema } from './row'
export * from './verdict'
