/** Choices that a browser keeps: how lengths and the page look. Read by the server for its first answer. */
export const LENGTH_UNIT_COOKIE = 'bendworthy-length-unit'
export const THEME_COOKIE = 'bendworthy-theme'

export type DisplayLengthUnit = 'mm' | 'um' | 'mil'
export type Theme = 'system' | 'light' | 'dark'

export function parseLengthUnitPreference(value: string | undefined): DisplayLengthUnit {
  return value === 'mm' || value === 'mil' ? value : 'um'
}

export function parseThemePreference(value: string | undefined): Theme {
  return value === 'light' || value === 'dark' ? value : 'system'
}
