'use client'

import { getShownUnit } from '@/app/_components/ui/quantity'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { getUnitLabel } from '@/lib/drawing'
import { formatLength, type LengthUnit, parseLength } from '@/lib/engine'
import type { CellProps } from './cell-frame'
import { type Reading, TypedCell } from './typed-cell'

interface NumericCellProps<T extends number | null> extends CellProps {
  readonly value: T
  readonly onChange: (value: T) => void
}

/** Twelve digits hide the last bits that unit conversion leaves, and nothing that anybody typed. */
function tidy(value: number): number {
  return Number(value.toPrecision(12))
}

function trimNumber(text: string): string {
  const number = text.split(' ')[0] ?? ''
  return number.includes('.') ? number.replace(/\.?0+$/, '') : number
}

function useLengthNotation(kind: 'thickness' | 'plan'): {
  unit: LengthUnit
  format: (valueUm: number) => string
  read: (text: string) => Reading
} {
  const { unit: chosen } = useLengthUnit()
  const unit = getShownUnit(kind === 'plan' ? 'mm' : 'um', chosen)
  return {
    unit,
    format: (valueUm) => trimNumber(formatLength(valueUm, unit, unit === 'um' ? 3 : 6)),
    read: (text) => {
      const parsed = parseLength(text, unit)
      return parsed.ok ? { ok: true, value: tidy(parsed.valueUm) } : { ok: false, reason: parsed.message }
    },
  }
}

/** Thickness in um, shown in the chosen unit. A unit typed with the number (`1.4 mil`) wins. */
export function ThicknessCell({ value, onChange, ...cell }: NumericCellProps<number>) {
  const { unit, format, read } = useLengthNotation('thickness')
  return (
    <TypedCell
      {...cell}
      value={value}
      unit={getUnitLabel(unit)}
      notation={unit}
      format={format}
      read={read}
      onChange={(next) => {
        if (next !== null) onChange(next)
      }}
    />
  )
}

export function OptionalThicknessCell({ value, onChange, ...cell }: NumericCellProps<number | null>) {
  const { unit, format, read } = useLengthNotation('thickness')
  return (
    <TypedCell
      {...cell}
      value={value}
      unit={getUnitLabel(unit)}
      notation={unit}
      format={format}
      read={(text) => (text.trim() === '' ? { ok: true, value: null } : read(text))}
      onChange={onChange}
    />
  )
}

/** Plan dimension in mm. */
export function PlanLengthCell({ value, onChange, ...cell }: NumericCellProps<number>) {
  const { unit, format, read } = useLengthNotation('plan')
  return (
    <TypedCell
      {...cell}
      value={value}
      unit={getUnitLabel(unit)}
      notation={unit}
      format={(valueMm) => format(tidy(valueMm * 1000))}
      read={(text) => toMm(read(text))}
      onChange={(next) => {
        if (next !== null) onChange(next)
      }}
    />
  )
}

export function OptionalPlanLengthCell({ value, onChange, ...cell }: NumericCellProps<number | null>) {
  const { unit, format, read } = useLengthNotation('plan')
  return (
    <TypedCell
      {...cell}
      value={value}
      unit={getUnitLabel(unit)}
      notation={unit}
      format={(valueMm) => format(tidy(valueMm * 1000))}
      read={(text) => (text.trim() === '' ? { ok: true, value: null } : toMm(read(text)))}
      onChange={onChange}
    />
  )
}

function toMm(reading: Reading): Reading {
  return reading.ok && reading.value !== null ? { ok: true, value: tidy(reading.value / 1000) } : reading
}

interface PlainNumberProps {
  readonly unit?: string
  /** 100 shows a fraction as per cent. */
  readonly factor?: number
}

export function NumberCell({
  value,
  onChange,
  unit,
  factor = 1,
  ...cell
}: NumericCellProps<number> & PlainNumberProps) {
  return (
    <TypedCell
      {...cell}
      value={value}
      unit={unit}
      notation=""
      format={(stored) => String(tidy(stored * factor))}
      read={(text) => readNumber(text, factor, false)}
      onChange={(next) => {
        if (next !== null) onChange(next)
      }}
    />
  )
}

export function OptionalNumberCell({
  value,
  onChange,
  unit,
  factor = 1,
  ...cell
}: NumericCellProps<number | null> & PlainNumberProps) {
  return (
    <TypedCell
      {...cell}
      value={value}
      unit={unit}
      notation=""
      format={(stored) => String(tidy(stored * factor))}
      read={(text) => readNumber(text, factor, true)}
      onChange={onChange}
    />
  )
}

/** Digits with a decimal point, optionally with a power of ten, and groups parted by spaces: `2 000 000`, `2e6`. */
function readNumber(text: string, factor: number, mayBeEmpty: boolean): Reading {
  const trimmed = text.trim()
  if (trimmed === '') return mayBeEmpty ? { ok: true, value: null } : { ok: false, reason: 'Enter a number.' }
  const compact = trimmed.replace(/[\s\u00a0\u202f](?=\d{3}(\D|$))/g, '').replace(/^−/, '-')
  if (!/^[+-]?(\d+(\.\d*)?|\.\d+)(e[+-]?\d{1,3})?$/i.test(compact)) {
    return {
      ok: false,
      reason: compact.includes(',')
        ? `"${trimmed}" contains a comma: write decimals with a point.`
        : `"${trimmed}" is not a number.`,
    }
  }
  const value = Number(compact)
  return Number.isFinite(value) ? { ok: true, value: tidy(value / factor) } : { ok: false, reason: 'is too large.' }
}
