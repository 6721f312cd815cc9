'use client'

import { createContext, type ReactNode, useContext, useMemo, useState } from 'react'
import { type DisplayLengthUnit, digitsOfFoilWeight, digitsOfLength, getUnitSymbol } from '@/lib/engine/units'
import { FOIL_UNIT_COOKIE, type FoilUnit, LENGTH_UNIT_COOKIE } from './preferences'
import { writePreference } from './write-preference'

interface UnitContextValue {
  unit: DisplayLengthUnit
  setUnit: (unit: DisplayLengthUnit) => void
  foilUnit: FoilUnit
  setFoilUnit: (unit: FoilUnit) => void
}

const UnitContext = createContext<UnitContextValue>({
  unit: 'um',
  setUnit: () => undefined,
  foilUnit: 'length',
  setFoilUnit: () => undefined,
})

/** Keeps the units that the person chose, in cookies, so that the server's first answer already uses it. */
interface UnitProviderProps {
  readonly initialUnit: DisplayLengthUnit
  readonly initialFoilUnit?: FoilUnit
  readonly children: ReactNode
}

export function UnitProvider({ initialUnit, initialFoilUnit = 'length', children }: UnitProviderProps) {
  const [unit, setUnit] = useState(initialUnit)
  const [foilUnit, setFoilUnit] = useState(initialFoilUnit)
  const value = useMemo(
    () => ({
      unit,
      setUnit: (next: DisplayLengthUnit) => {
        setUnit(next)
        writePreference(LENGTH_UNIT_COOKIE, next)
      },
      foilUnit,
      setFoilUnit: (next: FoilUnit) => {
        setFoilUnit(next)
        writePreference(FOIL_UNIT_COOKIE, next)
      },
    }),
    [unit, foilUnit],
  )
  return <UnitContext value={value}>{children}</UnitContext>
}

export function useLengthUnit(): UnitContextValue {
  return useContext(UnitContext)
}

/** A computed thickness in the unit that the person chose; it is kept in um whatever is shown. */
export function Length({ valueUm }: { valueUm: number }) {
  const { unit } = useLengthUnit()
  return (
    <span className="quantity">
      {digitsOfLength(valueUm, unit)} <span className="unit">{getUnitSymbol(unit)}</span>
    </span>
  )
}

/** The thickness of a bought foil: as a length, or by weight where the person chose that. */
export function FoilThickness({ valueUm }: { valueUm: number }) {
  const { foilUnit } = useLengthUnit()
  if (foilUnit === 'length') return <Length valueUm={valueUm} />
  return (
    <span className="quantity">
      {digitsOfFoilWeight(valueUm)} <span className="unit">{getUnitSymbol(foilUnit)}</span>
    </span>
  )
}
