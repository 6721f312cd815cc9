'use client'

import { createContext, type ReactNode, useContext, useMemo, useState } from 'react'
import { digitsOfLength, getUnitSymbol } from '@/lib/engine/units'
import { type DisplayLengthUnit, LENGTH_UNIT_COOKIE } from './preferences'
import { writePreference } from './write-preference'

interface UnitContextValue {
  unit: DisplayLengthUnit
  setUnit: (unit: DisplayLengthUnit) => void
}

const UnitContext = createContext<UnitContextValue>({ unit: 'um', setUnit: () => undefined })

/** Keeps the length unit that the person chose, in a cookie, so that the server's first answer already uses it. */
export function UnitProvider({ initialUnit, children }: { initialUnit: DisplayLengthUnit; children: ReactNode }) {
  const [unit, setUnit] = useState(initialUnit)
  const value = useMemo(
    () => ({
      unit,
      setUnit: (next: DisplayLengthUnit) => {
        setUnit(next)
        writePreference(LENGTH_UNIT_COOKIE, next)
      },
    }),
    [unit],
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
