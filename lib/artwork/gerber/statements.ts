import type { Aperture } from '../apertures/aperture'
import { type Auditor, quote } from '../audit'
import { LARGEST_COORDINATE_NM } from '../limits'
import type { ObjectBuilder } from '../objects/object-builder'
import type { Attributes } from './attributes'
import { defineAperture } from './define-aperture'
import type { GerberDrawing } from './drawing'
import { nmPerUnit, readFormat } from './format'
import type { Frames } from './frames'
import type { GerberCounts } from './gerber-reading'
import type { Macro } from './macro'
import type { GerberReport } from './report'
import type { GerberScale } from './scale'
import { WholeImage } from './whole-image'
import type { GerberWords } from './words'

/** What statements set, and what they tell it to. */
export interface StatementParts {
  readonly words: GerberWords
  readonly report: GerberReport
  readonly auditor: Auditor
  readonly scale: GerberScale
  readonly frames: Frames
  readonly attributes: Attributes
  readonly drawing: GerberDrawing
  readonly counts: GerberCounts
  /** Steps of arithmetic that the macros of the file may take. */
  readonly budget: { workLeft: number }
}

/** Statements between percent signs, but for macros, which have words of their own. */
export class GerberStatements {
  readonly apertures = new Map<number, Aperture | ObjectBuilder>()
  readonly macros = new Map<string, Macro>()
  readonly whole = new WholeImage()
  isNegative = false
  isIncremental = false
  readonly #words: GerberWords
  readonly #report: GerberReport
  readonly #auditor: Auditor
  readonly #scale: GerberScale
  readonly #frames: Frames
  readonly #attributes: Attributes
  readonly #drawing: GerberDrawing
  readonly #counts: GerberCounts
  readonly #budget: { workLeft: number }

  constructor(parts: StatementParts) {
    this.#words = parts.words
    this.#report = parts.report
    this.#auditor = parts.auditor
    this.#scale = parts.scale
    this.#frames = parts.frames
    this.#attributes = parts.attributes
    this.#drawing = parts.drawing
    this.#counts = parts.counts
    this.#budget = parts.budget
  }

  /** @returns whether it is a statement of the format, today's or an older one */
  take(text: string): boolean {
    const { line, column } = this.#words
    const code = text.slice(0, 2)
    switch (code) {
      case 'FS':
        this.#takeFormat(text)
        return true
      case 'MO': {
        const unit = text.startsWith('MOMM') ? 'mm' : text.startsWith('MOIN') ? 'inch' : null
        if (unit === null) this.#report.error(`${quote(text)} is not a unit`)
        else this.#scale.setUnit(unit)
        return true
      }
      case 'AD':
        this.#takeAperture(text)
        return true
      case 'AB': {
        const found = /^ABD0*(\d{1,9})$/.exec(text.replace(/\s/g, ''))
        if (found !== null) {
          this.#counts.blocks += 1
          this.#frames.openBlock(Number(found[1]), line, column)
        } else {
          this.#frames.closeBlock(line, column)
          for (const [blockCode, block] of this.#frames.blocks) this.apertures.set(blockCode, block)
          this.#frames.blocks.clear()
        }
        return true
      }
      case 'SR':
        this.#takeRepeat(text)
        return true
      case 'LP':
        if (text !== 'LPD' && text !== 'LPC') this.#report.error(`${quote(text)} is not a polarity`)
        else {
          this.#drawing.isClear = text === 'LPC'
          if (text === 'LPC') this.#counts.clearSwitches += 1
        }
        return true
      case 'LM':
      case 'LR':
      case 'LS':
        this.#takeTurn(text)
        return true
      case 'TF':
      case 'TA':
      case 'TO':
      case 'TD':
        this.#attributes.take(text, line, column, this.#auditor)
        return true
      case 'IP':
        this.isNegative = text.startsWith('IPNEG')
        if (this.isNegative)
          this.#report.error('IPNEG makes the whole image a negative: areas here are of what is drawn')
        else this.#report.note('IP, the polarity of the whole image, is no longer in the format')
        return true
      case 'AS':
      case 'MI':
      case 'OF':
      case 'SF':
      case 'IR': {
        const problem = this.whole.take(text)
        if (problem !== null) this.#report.error(`${quote(text)}: ${problem}`)
        else this.#report.note(`${code}, which moves the whole image, is no longer in the format`)
        return true
      }
      case 'IN':
      case 'LN':
      case 'IJ':
      case 'IO':
      case 'OP':
      case 'PF':
        this.#report.note(`${code} is no longer in the format, and draws nothing`)
        return true
      case 'KO':
      case 'IF':
        this.#report.error(`${quote(text)}: ${code} left the format long ago and is not drawn`)
        return true
      default:
        return false
    }
  }

  #takeFormat(text: string): void {
    const format = readFormat(text)
    if (format === null) {
      this.#report.error(`${quote(text)} is not a format`)
      return
    }
    if (format.omitted === 'trailing') this.#report.note('trailing zeros left out (FST) are no longer in the format')
    if (format.isIncremental) {
      this.#report.note('incremental coordinates (FS.I) are no longer in the format')
      this.isIncremental = true
    }
    this.#scale.setFormat(format, this.#frames.builder.count > 0)
  }

  #takeAperture(text: string): void {
    if (this.#scale.unit === null) this.#scale.ask()
    const { unit } = this.#scale
    if (unit === null) return
    this.#counts.apertures += 1
    const aperture = defineAperture(text, {
      macros: this.macros,
      unitNm: nmPerUnit(unit),
      budget: this.#budget,
      attributes: this.#attributes.ofAperture(),
      error: (reason) => this.#report.error(reason),
      note: (reason) => this.#report.note(reason),
    })
    if (aperture === null) return
    if (this.apertures.has(aperture.code))
      this.#report.error(`aperture D${aperture.code} is defined twice: the later one holds from here on`)
    this.apertures.set(aperture.code, aperture)
  }

  #takeRepeat(text: string): void {
    const { line, column } = this.#words
    const written = text.slice(2).replace(/\s/g, '')
    if (written === '') {
      this.#frames.closeRepeat(line, column, false)
      return
    }
    const found = /^(?:X(\d{1,9}))?(?:Y(\d{1,9}))?(?:I([+-]?[\d.]+))?(?:J([+-]?[\d.]+))?$/.exec(written)
    const [countX, countY] = [Number(found?.[1] ?? 1), Number(found?.[2] ?? 1)]
    const { unit } = this.#scale
    const unitNm = unit === null ? Number.NaN : nmPerUnit(unit)
    const steps = [Number(found?.[3] ?? 0) * unitNm, Number(found?.[4] ?? 0) * unitNm] as const
    if (found === null || countX < 1 || countY < 1 || !steps.every((step) => Math.abs(step) <= LARGEST_COORDINATE_NM)) {
      this.#report.error(`${quote(text)} is not a step and repeat: not repeated`)
      return
    }
    this.#counts.stepRepeats += 1
    this.#frames.openRepeat([countX, countY], steps, line, column)
  }

  #takeTurn(text: string): void {
    const drawing = this.#drawing
    const value = text.slice(2).trim()
    const number = /^[+-]?(\d+\.?\d*|\.\d+)$/.test(value) ? Number(value) : Number.NaN
    if (text.startsWith('LM') && /^(N|X|Y|XY)$/.test(value)) {
      drawing.isMirroredX = value.includes('X')
      drawing.isMirroredY = value.includes('Y')
    } else if (text.startsWith('LR') && Number.isFinite(number)) drawing.rotationDeg = number % 360
    else if (text.startsWith('LS') && number > 0 && number <= 1000) drawing.scale = number
    else this.#report.error(`${quote(text)}: not followed`)
    drawing.turnApertures()
  }
}
