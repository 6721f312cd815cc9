'use client'

import type { QuantityRange, Quantity as QuantityValue, Unit } from '@/lib/engine/results'
import { formatLength, umFromLength } from '@/lib/engine/units'
import type { DisplayLengthUnit } from './preferences'
import { useLengthUnit } from './unit-context'

const SYMBOLS: Record<Unit, string> = {
  um: 'µm',
  mm: 'mm',
  deg: '°',
  pct: '%',
  fraction: '',
  ratio: '×',
  cycles: 'cycles',
  count: '',
  degC: '°C',
  amp: 'A',
  volt: 'V',
  ohm: 'Ω',
  gpa: 'GPa',
  mpa: 'MPa',
  newton: 'N',
  'newton-mm': 'N·mm',
  'newton-mm-per-mm': 'N·mm/mm',
  days: 'days',
  'oz-per-ft2': 'oz/ft²',
}

/** Digits that a reader can use: four significant at most, whole numbers where the thing is counted. */
export function formatValue(value: number, unit: Unit): string {
  if (unit === 'count' || unit === 'days') return String(Math.round(value))
  if (unit === 'cycles') return value >= 1e5 ? formatPower(value) : String(Math.round(value))
  if (value === 0) return '0'
  const magnitude = Math.abs(value)
  if (magnitude >= 1e6 || magnitude < 1e-4) return formatPower(value)
  return String(Number(value.toPrecision(magnitude >= 1000 ? 5 : 4)))
}

const SUPERSCRIPT: Record<string, string> = {
  '-': '⁻',
  '0': '⁰',
  '1': '¹',
  '2': '²',
  '3': '³',
  '4': '⁴',
  '5': '⁵',
  '6': '⁶',
  '7': '⁷',
  '8': '⁸',
  '9': '⁹',
}

function formatPower(value: number): string {
  const [mantissa = '', exponent = '0'] = value.toExponential(1).split('e')
  const raised = [...String(Number(exponent))].map((digit) => SUPERSCRIPT[digit] ?? digit).join('')
  return `${mantissa.replace(/\.0$/, '')}×10${raised}`
}

/** Plan dimensions are known to about a micrometre, thicknesses to a tenth of one. */
const DECIMALS = { um: { um: 1, mm: 4, mil: 3 }, mm: { um: 0, mm: 3, mil: 1 } } as const

function getDecimals(kept: 'um' | 'mm', shown: DisplayLengthUnit): number {
  return DECIMALS[kept][shown]
}

/** Where thickness is read in um, dimensions in plan are read in mm: nobody speaks of a radius of 8000 um. */
export function getShownUnit(kept: 'um' | 'mm', chosen: DisplayLengthUnit): DisplayLengthUnit {
  return kept === 'mm' && chosen === 'um' ? 'mm' : chosen
}

/** A dimension in plan, kept in mm. */
export function PlanLength({ valueMm }: { valueMm: number }) {
  return <QuantityText quantity={{ value: valueMm, unit: 'mm' }} />
}

/** The ends of a range in the unit that the quantity beside it is shown in. */
export function RangeText({ range, unit }: { range: QuantityRange; unit: Unit }) {
  const { unit: chosen } = useLengthUnit()
  const format = (value: number) => {
    if (unit !== 'um' && unit !== 'mm') return formatValue(value, unit)
    const shown = getShownUnit(unit, chosen)
    return formatLength(umFromLength(value, unit), shown, getDecimals(unit, shown)).split(' ')[0] ?? ''
  }
  return (
    <span className="quantity muted">
      {format(range.low)} to {format(range.high)}
    </span>
  )
}

/** A value with its unit; lengths follow the switch in the header. */
export function QuantityText({ quantity }: { quantity: QuantityValue }) {
  const { unit } = useLengthUnit()
  if (quantity.unit === 'um' || quantity.unit === 'mm') {
    const shown = getShownUnit(quantity.unit, unit)
    const text = formatLength(umFromLength(quantity.value, quantity.unit), shown, getDecimals(quantity.unit, shown))
    const split = text.lastIndexOf(' ')
    return <Joined number={text.slice(0, split)} symbol={text.slice(split + 1)} />
  }
  return <Joined number={formatValue(quantity.value, quantity.unit)} symbol={SYMBOLS[quantity.unit]} />
}

function Joined({ number, symbol }: { number: string; symbol: string }) {
  return (
    <span className="quantity">
      {number}
      {symbol !== '' && <span className="unit"> {symbol}</span>}
    </span>
  )
}
