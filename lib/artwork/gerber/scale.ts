import type { Question } from '../audit'
import { type CoordinateFormat, nmPerUnit, type Unit } from './format'
import type { GerberAnswers } from './gerber-reading'
import { type GerberNumber, powerOfTen } from './number'
import type { GerberReport } from './report'

/** Unit and format of a file's coordinates: stated by the file, or answered by somebody. */
export class GerberScale {
  readonly questions: Question[] = []
  readonly #report: GerberReport
  readonly #answers: GerberAnswers
  #unit: Unit | null = null
  #format: CoordinateFormat | null = null
  /** Nanometres of the last place of a coordinate; NaN until unit and format are known. */
  #xStep = Number.NaN
  #yStep = Number.NaN

  constructor(report: GerberReport, answers: GerberAnswers) {
    this.#report = report
    this.#answers = answers
  }

  get unit(): Unit | null {
    return this.#unit
  }

  get format(): CoordinateFormat | null {
    return this.#format
  }

  setUnit(unit: Unit): void {
    if (this.#unit !== null && this.#unit !== unit)
      this.#report.error(`the unit changes from ${this.#unit} to ${unit} in the middle of the file: taken from here on`)
    this.#unit = unit
    this.#rescale()
  }

  setFormat(format: CoordinateFormat, hasObjects: boolean): void {
    if (this.#format !== null && hasObjects)
      this.#report.error('the format changes in the middle of the file: taken from here on')
    this.#format = format
    this.#rescale()
  }

  /** Nanometres of a coordinate; NaN where its scale is not known, which is then asked. */
  toNm({ value, digits, hasPoint }: GerberNumber, isX: boolean): number {
    if (Number.isNaN(isX ? this.#xStep : this.#yStep)) this.ask()
    const step = isX ? this.#xStep : this.#yStep
    const format = this.#format
    if (Number.isNaN(step) || format === null) return Number.NaN
    const [whole, decimal] = isX ? format.xDigits : format.yDigits
    if (hasPoint) {
      this.#report.note('coordinates with a decimal point are not in the format: read as they stand')
      return Math.round(value * step * powerOfTen(decimal))
    }
    if (format.omitted === 'leading') {
      if (digits > whole + decimal) this.#report.note('coordinates with more digits than the format statement says')
      return Math.round(value * step)
    }
    return Math.round(value * step * 10 ** (whole + decimal - digits))
  }

  /** A coordinate comes before its scale is known: what somebody answered is taken, or the question is asked once. */
  ask(): void {
    const { unit, format } = this.#answers
    if (this.#unit === null && unit !== undefined) {
      this.#unit = unit
      this.#report.note(`the file states no unit: ${unit} as answered`)
    }
    if (this.#format === null && format !== undefined) {
      this.#format = format
      this.#report.note('the file states no format: as answered')
    }
    this.#rescale()
    const ask = (about: 'unit' | 'format', text: string) => {
      if (this.questions.some((question) => question.about === about)) return
      this.questions.push({ about, text, taken: null })
      this.#report.error(`${text} Without it no coordinate can be read.`)
    }
    if (this.#unit === null) ask('unit', 'The file states no unit (MO) before its first coordinate.')
    if (this.#format === null) ask('format', 'The file states no format (FS) before its first coordinate.')
  }

  #rescale(): void {
    if (this.#unit === null || this.#format === null) return
    const unitNm = nmPerUnit(this.#unit)
    this.#xStep = unitNm / powerOfTen(this.#format.xDigits[1])
    this.#yStep = unitNm / powerOfTen(this.#format.yDigits[1])
  }
}
