import { DISPLAY_LENGTH_UNITS, type DisplayLengthUnit } from '@/lib/engine/units'

/** Choices that a browser keeps: how lengths and the page look. Read by the server for its first answer. */
export const LENGTH_UNIT_COOKIE = 'bendworthy-length-unit'
export const FOIL_UNIT_COOKIE = 'bendworthy-foil-unit'
export const THEME_COOKIE = 'bendworthy-theme'

/** What stands in a cookie of something that the person put away. */
export const HIDDEN = 'hidden'

/** Of the first steps of a fabricator in one project. */
export function nameStartCookie(projectId: string): string {
  return `bendworthy-start-${projectId.replaceAll(/[^A-Za-z0-9-]/g, '')}`
}

/** Foil is bought by weight: its thickness as a length, or in oz/ft2. */
export type FoilUnit = 'length' | 'oz-per-ft2'
export type Theme = 'system' | 'light' | 'dark'

export function parseLengthUnitPreference(value: string | undefined): DisplayLengthUnit {
  return DISPLAY_LENGTH_UNITS.find((unit) => unit === value) ?? 'um'
}

export function parseFoilUnitPreference(value: string | undefined): FoilUnit {
  return value === 'oz-per-ft2' ? value : 'length'
}

export function parseThemePreference(value: string | undefined): Theme {
  return value === 'light' || value === 'dark' ? value : 'system'
}
