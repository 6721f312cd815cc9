'use client'

import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { tidy } from '@/lib/engine/numerics'
import type { LengthUnit } from '@/lib/engine/units'
import {
  digitsAsEntered,
  digitsOfEnteredLength,
  digitsOfFoilWeight,
  getShownUnit,
  getUnitSymbol,
  parseFoilThickness,
  parseLength,
  parseNumber,
} from '@/lib/engine/units'
import type { CellProps } from './cell-frame'
import { type Reading, TypedCell } from './typed-cell'

interface NumericCellProps<T extends number | null> extends CellProps {
  readonly value: T
  readonly onChange: (value: T) => void
}

function useLengthNotation(kind: 'thickness' | 'plan'): {
  unit: LengthUnit
  /** Of the value as the design keeps it: thickness in um, plan dimensions in mm. */
  format: (kept: number) => string
  read: (text: string) => Reading
} {
  const { unit: chosen } = useLengthUnit()
  const unit = getShownUnit(kind === 'plan' ? 'mm' : 'um', chosen)
  return {
    unit,
    format: (kept) => digitsOfEnteredLength(kept, kind === 'plan' ? 'mm' : 'um', unit),
    read: (text) => {
      const parsed = parseLength(text, unit)
      if (!parsed.ok) return { ok: false, reason: parsed.message }
      const um = tidy(parsed.valueUm)
      return { ok: true, value: kind === 'plan' ? tidy(um / 1000) : um }
    },
  }
}

/** A field that cannot be empty keeps its last value while nothing is typed. */
function whereGiven(onChange: (value: number) => void): (value: number | null) => void {
  return (next) => {
    if (next !== null) onChange(next)
  }
}

interface LengthCellProps extends NumericCellProps<number | null> {
  readonly kind: 'thickness' | 'plan'
  readonly mayBeEmpty: boolean
}

function LengthCell({ kind, mayBeEmpty, ...cell }: LengthCellProps) {
  const { unit, format, read } = useLengthNotation(kind)
  return (
    <TypedCell
      {...cell}
      unit={getUnitSymbol(unit)}
      notation={unit}
      format={format}
      read={(text) => (mayBeEmpty && text.trim() === '' ? { ok: true, value: null } : read(text))}
    />
  )
}

/** Thickness in um, shown in the chosen unit. A unit typed with the number (`1.4 mil`) wins. */
export function ThicknessCell({ onChange, ...cell }: NumericCellProps<number>) {
  return <LengthCell {...cell} kind="thickness" mayBeEmpty={false} onChange={whereGiven(onChange)} />
}

export function OptionalThicknessCell(cell: NumericCellProps<number | null>) {
  return <LengthCell {...cell} kind="thickness" mayBeEmpty />
}

/** Plan dimension in mm. */
export function PlanLengthCell({ onChange, ...cell }: NumericCellProps<number>) {
  return <LengthCell {...cell} kind="plan" mayBeEmpty={false} onChange={whereGiven(onChange)} />
}

export function OptionalPlanLengthCell(cell: NumericCellProps<number | null>) {
  return <LengthCell {...cell} kind="plan" mayBeEmpty />
}

/** Thickness of a foil in um, by weight where the person chose that. Ounces typed with the number are read in either case. */
export function FoilThicknessCell({ value, onChange, ...cell }: NumericCellProps<number>) {
  const { unit: chosen, foilUnit } = useLengthUnit()
  const unit = foilUnit === 'length' ? getShownUnit('um', chosen) : foilUnit
  return (
    <TypedCell
      {...cell}
      value={value}
      unit={getUnitSymbol(unit)}
      notation={unit}
      format={(kept) => (unit === 'oz-per-ft2' ? digitsOfFoilWeight(kept) : digitsOfEnteredLength(kept, 'um', unit))}
      read={(text) => {
        const parsed = parseFoilThickness(text, unit)
        return parsed.ok ? { ok: true, value: tidy(parsed.valueUm) } : { ok: false, reason: parsed.message }
      }}
      onChange={whereGiven(onChange)}
    />
  )
}

interface PlainNumberProps {
  readonly unit?: string
  /** 100 shows a fraction as per cent. */
  readonly factor?: number
}

interface PlainNumberCellProps extends NumericCellProps<number | null>, PlainNumberProps {
  readonly mayBeEmpty: boolean
}

function PlainNumberCell({ factor = 1, mayBeEmpty, ...cell }: PlainNumberCellProps) {
  return (
    <TypedCell
      {...cell}
      notation=""
      format={(stored) => digitsAsEntered(factor === 1 ? stored : tidy(stored * factor))}
      read={(text) => readNumber(text, factor, mayBeEmpty)}
    />
  )
}

export function NumberCell({ onChange, ...cell }: NumericCellProps<number> & PlainNumberProps) {
  return <PlainNumberCell {...cell} mayBeEmpty={false} onChange={whereGiven(onChange)} />
}

export function OptionalNumberCell(cell: NumericCellProps<number | null> & PlainNumberProps) {
  return <PlainNumberCell {...cell} mayBeEmpty />
}

function readNumber(text: string, factor: number, mayBeEmpty: boolean): Reading {
  if (mayBeEmpty && text.trim() === '') return { ok: true, value: null }
  const parsed = parseNumber(text)
  return parsed.ok ? { ok: true, value: tidy(parsed.value / factor) } : { ok: false, reason: parsed.message }
}
