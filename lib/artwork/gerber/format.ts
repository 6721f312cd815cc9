import { NM_PER_INCH, NM_PER_MM } from '../limits'

export type Unit = 'mm' | 'inch'
export const nmPerUnit = (unit: Unit): number => (unit === 'mm' ? NM_PER_MM : NM_PER_INCH)

/** How the digits of a coordinate are to be read. */
export interface CoordinateFormat {
  /** Which zeros may be left out: those before the digits or those after them. */
  readonly omitted: 'leading' | 'trailing'
  readonly isIncremental: boolean
  readonly xDigits: readonly [whole: number, decimal: number]
  readonly yDigits: readonly [whole: number, decimal: number]
}

const FORMAT = /^FS([LTD]?)([AI]?)(?:N\d)?(?:G\d)?X(\d)(\d)Y(\d)(\d)/

/** A format statement, or null. `D` and no letter are found in old files: the digits are then complete, so that either reading is right. */
export function readFormat(text: string): CoordinateFormat | null {
  const found = FORMAT.exec(text.replace(/\s/g, ''))
  if (found === null) return null
  const digits = (at: number) => Number(found[at])
  return {
    omitted: found[1] === 'T' ? 'trailing' : 'leading',
    isIncremental: found[2] === 'I',
    xDigits: [digits(3), digits(4)],
    yDigits: [digits(5), digits(6)],
  }
}
