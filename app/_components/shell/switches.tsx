'use client'

import { useState } from 'react'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { THEME_COOKIE, type Theme } from '@/app/_components/ui/preferences'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { writePreference } from '@/app/_components/ui/write-preference'
import { DISPLAY_LENGTH_UNITS, getUnitSymbol } from '@/lib/engine/units'

const UNITS = DISPLAY_LENGTH_UNITS.map((unit) => ({ value: unit, label: getUnitSymbol(unit) }))

export function LengthUnitSwitch() {
  const { unit, setUnit } = useLengthUnit()
  return <ChoiceGroup label="Unit of length" options={UNITS} value={unit} onChange={setUnit} />
}

const FOIL_UNITS = [
  { value: 'length', label: 'length' },
  { value: 'oz-per-ft2', label: getUnitSymbol('oz-per-ft2') },
] as const

/** Stands beside the layers, where foils are chosen. */
export function FoilUnitSwitch() {
  const { foilUnit, setFoilUnit } = useLengthUnit()
  return <ChoiceGroup label="Foil thickness as" options={FOIL_UNITS} value={foilUnit} onChange={setFoilUnit} />
}

const THEMES = [
  { value: 'system', label: 'System' },
  { value: 'light', label: 'Light' },
  { value: 'dark', label: 'Dark' },
] as const

export function ThemeSwitch({ initialTheme }: { initialTheme: Theme }) {
  const [theme, setTheme] = useState<Theme>(initialTheme)
  return (
    <ChoiceGroup
      label="Light or dark"
      options={THEMES}
      value={theme}
      onChange={(next) => {
        setTheme(next)
        writePreference(THEME_COOKIE, next)
        if (next === 'system') delete document.documentElement.dataset.theme
        else document.documentElement.dataset.theme = next
      }}
    />
  )
}
