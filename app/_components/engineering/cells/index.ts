export { FormCells, GridCells } from './cell-frame'
export { type Choice, ChoiceCell, ChoiceSetCell, ObservedCell, OptionalChoiceCell, TickCell } from './choice-cells'
export { FieldCell, type FieldValue } from './field-cell'
export {
  FoilThicknessCell,
  NumberCell,
  OptionalNumberCell,
  OptionalPlanLengthCell,
  OptionalThicknessCell,
  PlanLengthCell,
  ThicknessCell,
} from './number-cells'
export { makePlaces, type Place } from './place'
export { RecordCells } from './record-cells'
export { DateCell, LongTextCell, TextCell } from './text-cells'
export { useUnitLabels } from './use-unit-labels'
