'use client'

import { useState } from 'react'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { THEME_COOKIE, type Theme } from '@/app/_components/ui/preferences'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { writePreference } from '@/app/_components/ui/write-preference'

const UNITS = [
  { value: 'mm', label: 'mm' },
  { value: 'um', label: 'µm' },
  { value: 'mil', label: 'mil' },
] as const

export function LengthUnitSwitch() {
  const { unit, setUnit } = useLengthUnit()
  return <ChoiceGroup label="Unit of length" options={UNITS} value={unit} onChange={setUnit} />
}

const THEMES = [
  { value: 'system', label: 'As the system' },
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
