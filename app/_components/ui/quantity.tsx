'use client'

import {
  CANNOT_TELL,
  getBoundPrefix,
  type QuantityRange,
  type Quantity as QuantityValue,
  type Reading,
  type Unit,
} from '@/lib/engine/results'
import type { LengthUnit } from '@/lib/engine/units'
import {
  digitsOfEnteredLength,
  digitsOfLength,
  digitsOfResult,
  digitsOfResultLength,
  getShownUnit,
  getUnitSymbol,
  umFromLength,
} from '@/lib/engine/units'
import { useLengthUnit } from './unit-context'

/** A dimension in plan that the design states, kept in mm: exact. */
export function EnteredPlanLength({ valueMm }: { valueMm: number }) {
  const { unit: chosen } = useLengthUnit()
  const unit = getShownUnit('mm', chosen)
  return <Joined number={digitsOfEnteredLength(valueMm, 'mm', unit)} symbol={getUnitSymbol(unit)} />
}

/** A thickness that somebody stated, kept in um: exact. */
export function EnteredThickness({ valueUm }: { valueUm: number }) {
  const { unit } = useLengthUnit()
  return <Joined number={digitsOfEnteredLength(valueUm, 'um', unit)} symbol={getUnitSymbol(unit)} />
}

/** A computed dimension in plan, kept in mm. */
export function PlanLength({ valueMm }: { valueMm: number }) {
  const { unit: chosen } = useLengthUnit()
  const unit = getShownUnit('mm', chosen)
  return <Joined number={digitsOfLength(umFromLength(valueMm, 'mm'), unit, 'plan')} symbol={getUnitSymbol(unit)} />
}

function getDigits(value: number, unit: Unit, chosen: LengthUnit): string {
  return unit === 'um' || unit === 'mm'
    ? digitsOfResultLength(value, unit, getShownUnit(unit, chosen))
    : digitsOfResult(value, unit)
}

/** The ends of a range in the unit that the quantity beside it is shown in. */
export function RangeText({ range, unit }: { range: QuantityRange; unit: Unit }) {
  const { unit: chosen } = useLengthUnit()
  return (
    <span className="quantity muted">
      {getDigits(range.low, unit, chosen)} to {getDigits(range.high, unit, chosen)}
    </span>
  )
}

/** A value of a result with its unit; lengths follow the switch in the header. */
export function QuantityText({ quantity: { value, unit, bound } }: { quantity: QuantityValue }) {
  const { unit: chosen } = useLengthUnit()
  const shown = unit === 'um' || unit === 'mm' ? getShownUnit(unit, chosen) : unit
  return <Joined number={`${getBoundPrefix(bound)}${getDigits(value, unit, chosen)}`} symbol={getUnitSymbol(shown)} />
}

/** A figure that may be one that nobody can tell. */
export function ReadingText({ reading }: { reading: Reading }) {
  return reading === CANNOT_TELL ? <span>{CANNOT_TELL}</span> : <QuantityText quantity={reading} />
}

function Joined({ number, symbol }: { number: string; symbol: string }) {
  return (
    <span className="quantity">
      {number}
      {symbol !== '' && <span className="unit">{symbol === getUnitSymbol('deg') ? symbol : ` ${symbol}`}</span>}
    </span>
  )
}
