import type { Aperture } from '../apertures/aperture'
import { Auditor, type Question, quote } from '../audit'
import { LARGEST_COORDINATE_NM, mostObjectsOf } from '../limits'
import type { ObjectBuilder } from '../objects/object-builder'
import { Attributes } from './attributes'
import { defineAperture } from './define-aperture'
import { GerberDrawing, modeOfCode } from './drawing'
import { type CoordinateFormat, nmPerUnit, readFormat, type Unit } from './format'
import { Frames } from './frames'
import type { GerberAnswers, GerberCounts, GerberReading } from './gerber-reading'
import { type Macro, MOST_MACRO_STATEMENTS, mostMacroWorkOf } from './macro'
import { WholeImage } from './whole-image'
import { GerberWords } from './words'

const MOST_COMMENTS = 60
const [UPPER_D, UPPER_G, UPPER_I, UPPER_J, UPPER_M, UPPER_N, UPPER_X, UPPER_Y] = [...'DGIJMNXY'].map((letter) =>
  letter.charCodeAt(0),
) as [number, number, number, number, number, number, number, number]
const [DOT, PLUS, MINUS, ZERO, NINE] = [0x2e, 0x2b, 0x2d, 0x30, 0x39]
const POWERS = Array.from({ length: 20 }, (_, at) => 10 ** at)

/**
 * Reads a Gerber file: RS-274X with the attributes of X2 and X3 (Gerber Layer Format Specification, revision 2024.05, from memory; what it deprecates is read and noted). Whatever the bytes are,
 * there is an answer: what could be read, and what could not, with line and reason.
 */
export function readGerber(bytes: Uint8Array, answers: GerberAnswers = {}): GerberReading {
  return new GerberReader(bytes, answers).read()
}

class GerberReader {
  readonly #auditor = new Auditor()
  readonly #words: GerberWords
  readonly #frames: Frames
  readonly #attributes = new Attributes()
  readonly #counts: GerberCounts = {
    ...{ apertures: 0, macros: 0, lines: 0, arcs: 0, flashes: 0, regions: 0, contours: 0 },
    ...{ regionLines: 0, regionArcs: 0, clearSwitches: 0, stepRepeats: 0, blocks: 0 },
  }
  readonly #drawing: GerberDrawing
  readonly #apertures = new Map<number, Aperture | ObjectBuilder>()
  readonly #macros = new Map<string, Macro>()
  readonly #budget = { workLeft: 0 }
  readonly #whole = new WholeImage()
  readonly #comments: string[] = []
  readonly #questions: Question[] = []
  #unit: Unit | null = null
  #format: CoordinateFormat | null = null
  #isNegative = false
  #isIncremental = false
  #isEnded = false
  #operation = 0
  /** Nanometres of the last place of a coordinate; NaN until unit and format are known. */
  #xStep = Number.NaN
  #yStep = Number.NaN
  // The number that was read last: what its digits say, how many they are, and whether a point stood among them.
  #value = 0
  #digits = 0
  #hasPoint = false

  constructor(
    bytes: Uint8Array,
    private readonly answers: GerberAnswers,
  ) {
    this.#words = new GerberWords(bytes)
    this.#budget.workLeft = mostMacroWorkOf(bytes.length)
    this.#frames = new Frames(this.#auditor, mostObjectsOf(bytes.length))
    this.#drawing = new GerberDrawing(this.#frames, this.#attributes, this.#auditor, this.#counts)
  }

  read(): GerberReading {
    const words = this.#words
    while (!this.#isEnded && words.next()) {
      if (words.isUnended && words.end < words.bytes.length) this.#error('a command without its * at the end')
      if (words.isExtended) this.#readExtended()
      else this.#readOrdinary(words.start)
    }
    this.#finishState()
    const builder = this.#frames.finish(
      this.#whole.placement(this.#unit === null ? 0 : nmPerUnit(this.#unit)),
      words.line,
    )
    return {
      kind: 'gerber',
      unit: this.#unit,
      format: this.#format,
      objects: builder.finish(this.#frames.uses.list, this.#attributes.sets),
      counts: this.#counts,
      fileAttributes: this.#attributes.file,
      comments: this.#comments,
      isNegative: this.#isNegative,
      questions: this.#questions,
      issues: this.#auditor.finish(),
    }
  }

  #finishState(): void {
    const words = this.#words
    if (this.#drawing.isInRegion) {
      this.#error('the last region has no end: ended here')
      this.#drawing.endRegion(words.line, words.column)
    }
    if (!this.#isEnded) this.#error('the file has no M02 at its end: it may have been cut off')
    else if (words.next())
      this.#auditor.note(words.line, words.column, 'something follows the end of the file: not read')
  }

  #error(reason: string): void {
    this.#auditor.error(this.#words.line, this.#words.column, reason)
  }

  #note(reason: string): void {
    this.#auditor.noteOnce(this.#words.line, this.#words.column, reason)
  }

  // Ordinary commands: letters with numbers.

  #readOrdinary(from: number): void {
    const words = this.#words
    const { bytes, end } = words
    let at = from
    let hasCoordinate = false
    let x = this.#drawing.x
    let y = this.#drawing.y
    let i = 0
    let j = 0
    let operation = 0
    let isBad = false
    while (at < end) {
      const letter = bytes[at] ?? 0
      if (letter <= 0x20) {
        at += 1
        continue
      }
      const numberAt = at + 1
      if (letter === UPPER_G && this.#isCommentAt(at)) {
        this.#takeComment(at)
        return
      }
      at = this.#readNumber(numberAt, end)
      if (letter === UPPER_X || letter === UPPER_Y || letter === UPPER_I || letter === UPPER_J) {
        if (at === numberAt) {
          this.#error(`${quote(words.text())}: a coordinate without a number`)
          isBad = true
          continue
        }
        if (operation !== 0) {
          // The star between two commands is missing: the first one is done, the second goes on.
          this.#error('two commands without a * between them')
          this.#operate(operation, x, y, i, j, isBad)
          operation = 0
          i = 0
          j = 0
        }
        const nm = this.#coordinateNm(letter === UPPER_X || letter === UPPER_I)
        if (Number.isNaN(nm)) {
          isBad = true
          continue
        }
        hasCoordinate = true
        if (letter === UPPER_X) x = this.#isIncremental ? this.#drawing.x + nm : nm
        else if (letter === UPPER_Y) y = this.#isIncremental ? this.#drawing.y + nm : nm
        else if (letter === UPPER_I) i = nm
        else j = nm
        if (!isBad && Math.max(Math.abs(nm), Math.abs(x), Math.abs(y)) > LARGEST_COORDINATE_NM) {
          this.#error(`${quote(words.text())}: a coordinate beyond 2 m`)
          isBad = true
        }
        continue
      }
      if (at === numberAt) {
        this.#error(`${quote(words.text())} is no command`)
        return
      }
      const code = this.#value
      if (letter === UPPER_D) {
        if (code >= 1 && code <= 3) operation = code
        else this.#select(code)
      } else if (letter === UPPER_G) this.#takeG(code)
      else if (letter === UPPER_M) {
        this.#takeM(code)
        return
      } else if (letter !== UPPER_N) {
        this.#error(`${quote(words.text())} is no command`)
        return
      }
    }
    if (operation === 0 && hasCoordinate) {
      if (this.#operation === 0) {
        this.#error('a coordinate without D01, D02 or D03: left out')
        return
      }
      this.#note('coordinates without D01, D02 or D03 repeat the last one, which is no longer in the format')
      operation = this.#operation
    }
    if (operation !== 0) this.#operate(operation, x, y, i, j, isBad)
  }

  #operate(operation: number, x: number, y: number, i: number, j: number, isBad: boolean): void {
    this.#operation = operation
    if (isBad) return
    const { line, column } = this.#words
    if (operation === 1) this.#drawing.plot(x, y, i, j, line, column)
    else if (operation === 2) this.#drawing.move(x, y, line, column)
    else this.#drawing.flash(x, y, line, column)
  }

  /** Reads sign, digits and point; returns where it ends. Line ends inside a number are passed over, as some files break their lines anywhere. */
  #readNumber(from: number, end: number): number {
    const { bytes } = this.#words
    let at = from
    let value = 0
    let digits = 0
    let decimals = -1
    let isNegative = false
    const first = bytes[at]
    if (at < end && (first === PLUS || first === MINUS)) {
      isNegative = first === MINUS
      at += 1
    }
    for (; at < end; at += 1) {
      const byte = bytes[at] ?? 0
      if (byte >= ZERO && byte <= NINE) {
        value = value * 10 + (byte - ZERO)
        digits += 1
        if (decimals >= 0) decimals += 1
      } else if (byte === DOT && decimals < 0) decimals = 0
      else if (byte !== 0x0a && byte !== 0x0d) break
    }
    if (digits === 0) return from
    this.#hasPoint = decimals >= 0
    if (decimals > 0) value /= POWERS[Math.min(decimals, 19)] ?? 1e19
    this.#value = isNegative ? -value : value
    this.#digits = digits
    return at
  }

  #coordinateNm(isX: boolean): number {
    const step = isX ? this.#xStep : this.#yStep
    const format = this.#format
    if (Number.isNaN(step) || format === null) {
      this.#askForScale()
      const known = isX ? this.#xStep : this.#yStep
      if (Number.isNaN(known) || this.#format === null) return Number.NaN
      return this.#coordinateNm(isX)
    }
    const [whole, decimal] = isX ? format.xDigits : format.yDigits
    if (this.#hasPoint) {
      this.#note('coordinates with a decimal point are not in the format: read as they stand')
      return Math.round(this.#value * step * (POWERS[decimal] ?? 1))
    }
    if (format.omitted === 'leading') {
      if (this.#digits > whole + decimal) this.#note('coordinates with more digits than the format statement says')
      return Math.round(this.#value * step)
    }
    return Math.round(this.#value * step * 10 ** (whole + decimal - this.#digits))
  }

  /** A coordinate comes before its scale is known: what somebody answered is taken, or the question is asked once. */
  #askForScale(): void {
    const { unit, format } = this.answers
    if (this.#unit === null && unit !== undefined) {
      this.#unit = unit
      this.#note(`the file states no unit: ${unit} as answered`)
    }
    if (this.#format === null && format !== undefined) {
      this.#format = format
      this.#note('the file states no format: as answered')
    }
    this.#rescale()
    const { line, column } = this.#words
    const ask = (about: 'unit' | 'format', text: string) => {
      if (this.#questions.some((question) => question.about === about)) return
      this.#questions.push({ about, text, taken: null })
      this.#auditor.error(line, column, `${text} Without it no coordinate can be read.`)
    }
    if (this.#unit === null) ask('unit', 'The file states no unit (MO) before its first coordinate.')
    if (this.#format === null) ask('format', 'The file states no format (FS) before its first coordinate.')
  }

  #rescale(): void {
    if (this.#unit === null || this.#format === null) return
    const unitNm = nmPerUnit(this.#unit)
    this.#xStep = unitNm / (POWERS[this.#format.xDigits[1]] ?? 1)
    this.#yStep = unitNm / (POWERS[this.#format.yDigits[1]] ?? 1)
  }

  #setUnit(unit: Unit): void {
    if (this.#unit !== null && this.#unit !== unit)
      this.#error(`the unit changes from ${this.#unit} to ${unit} in the middle of the file: taken from here on`)
    this.#unit = unit
    this.#rescale()
  }

  #select(code: number): void {
    const aperture = this.#apertures.get(code)
    if (aperture === undefined) this.#error(code < 10 ? `there is no D0${code}` : `aperture D${code} is not defined`)
    this.#drawing.select(aperture ?? null)
  }

  #takeG(code: number): void {
    const { line, column } = this.#words
    switch (code) {
      case 1:
      case 2:
      case 3:
        this.#drawing.mode = modeOfCode(code)
        return
      case 36:
        this.#drawing.beginRegion(line, column)
        return
      case 37:
        this.#drawing.endRegion(line, column)
        return
      case 74:
        this.#drawing.quadrants = 'single'
        this.#note('G74, arcs of a quarter turn without signs, is no longer in the format')
        return
      case 75:
        this.#drawing.quadrants = 'multi'
        return
      case 70:
      case 71:
        this.#note('G70 and G71 for the unit are no longer in the format')
        this.#setUnit(code === 70 ? 'inch' : 'mm')
        return
      case 90:
      case 91:
        this.#isIncremental = code === 91
        this.#note('G90 and G91 are no longer in the format')
        return
      case 54:
      case 55:
        this.#note('G54 and G55 are no longer in the format')
        return
      case 0:
      case 10:
      case 11:
      case 12:
        this.#note(`G${code} is no longer in the format: read as straight lines`)
        this.#drawing.mode = modeOfCode(1)
        return
      default:
        this.#error(`there is no G${code}: passed over`)
    }
  }

  #takeM(code: number): void {
    if (code === 2 || code === 0 || code === 30) {
      if (code !== 2) this.#note(`M${code} at the end is no longer in the format`)
      this.#isEnded = true
    } else if (code !== 1) this.#error(`there is no M${code}: passed over`)
  }

  #isCommentAt(at: number): boolean {
    const { bytes, end } = this.#words
    const digit = bytes[at + 1] === ZERO ? at + 2 : at + 1
    const after = digit + 1 < end ? (bytes[digit + 1] ?? 0) : 0
    return bytes[digit] === 0x34 && !(after >= ZERO && after <= NINE)
  }

  #takeComment(at: number): void {
    const { bytes, end, line, column } = this.#words
    // Nothing but attributes and the first comments are looked at: a file may hold many.
    const isFull = this.#comments.length >= MOST_COMMENTS
    const text = isFull && end - at > 4000 ? '' : new TextDecoder().decode(bytes.subarray(at, Math.min(end, at + 4000)))
    const body = text.replace(/^G0?4[\s]*/, '').replace(/[\r\n]+/g, '')
    const attribute = /^#@!\s*(T[FAOD].*)$/.exec(body)
    if (attribute !== null) this.#attributes.take(attribute[1] ?? '', line, column, this.#auditor)
    else if (body !== '' && !isFull) this.#comments.push(body.slice(0, 200))
  }

  // Statements between percent signs.

  #readExtended(): void {
    const words = this.#words
    const { line, column } = words
    const text = words.text()
    const code = text.slice(0, 2)
    switch (code) {
      case 'FS':
        this.#takeFormat(text)
        return
      case 'MO': {
        const unit = text.startsWith('MOMM') ? 'mm' : text.startsWith('MOIN') ? 'inch' : null
        if (unit === null) this.#error(`${quote(text)} is no unit`)
        else this.#setUnit(unit)
        return
      }
      case 'AD':
        this.#takeAperture(text)
        return
      case 'AM':
        this.#takeMacro(text)
        return
      case 'AB': {
        const found = /^ABD0*(\d{1,9})$/.exec(text.replace(/\s/g, ''))
        if (found !== null) {
          this.#counts.blocks += 1
          this.#frames.openBlock(Number(found[1]), line, column)
        } else {
          this.#frames.closeBlock(line, column)
          for (const [blockCode, block] of this.#frames.blocks) this.#apertures.set(blockCode, block)
          this.#frames.blocks.clear()
        }
        return
      }
      case 'SR':
        this.#takeRepeat(text)
        return
      case 'LP':
        if (text !== 'LPD' && text !== 'LPC') this.#error(`${quote(text)} is no polarity`)
        else {
          this.#drawing.isClear = text === 'LPC'
          if (text === 'LPC') this.#counts.clearSwitches += 1
        }
        return
      case 'LM':
      case 'LR':
      case 'LS':
        this.#takeTurn(text)
        return
      case 'TF':
      case 'TA':
      case 'TO':
      case 'TD':
        this.#attributes.take(text, line, column, this.#auditor)
        return
      case 'IP':
        this.#isNegative = text.startsWith('IPNEG')
        if (this.#isNegative) this.#error('IPNEG makes the whole image a negative: areas here are of what is drawn')
        else this.#note('IP, the polarity of the whole image, is no longer in the format')
        return
      case 'AS':
      case 'MI':
      case 'OF':
      case 'SF':
      case 'IR': {
        const problem = this.#whole.take(text)
        if (problem !== null) this.#error(`${quote(text)}: ${problem}`)
        else this.#note(`${code}, which moves the whole image, is no longer in the format`)
        return
      }
      case 'IN':
      case 'LN':
      case 'IJ':
      case 'IO':
      case 'OP':
      case 'PF':
        this.#note(`${code} is no longer in the format, and draws nothing`)
        return
      case 'KO':
      case 'IF':
        this.#error(`${quote(text)}: ${code} left the format long ago and is not drawn`)
        return
      default:
        // Old files put ordinary commands between percent signs.
        if (/^[GDMXYIJ]\d|^[XYIJ][+-]/.test(text)) {
          this.#note('ordinary commands between percent signs')
          this.#readOrdinary(words.start)
        } else this.#error(`${quote(text)} is no statement of the format`)
    }
  }

  #takeFormat(text: string): void {
    const format = readFormat(text)
    if (format === null) {
      this.#error(`${quote(text)} is no format`)
      return
    }
    if (format.omitted === 'trailing') this.#note('trailing zeros left out (FST) are no longer in the format')
    if (format.isIncremental) {
      this.#note('incremental coordinates (FS.I) are no longer in the format')
      this.#isIncremental = true
    }
    if (this.#format !== null && this.#frames.builder.count > 0)
      this.#error('the format changes in the middle of the file: taken from here on')
    this.#format = format
    this.#rescale()
  }

  #takeAperture(text: string): void {
    if (this.#unit === null) this.#askForScale()
    if (this.#unit === null) return
    this.#counts.apertures += 1
    const aperture = defineAperture(text, {
      macros: this.#macros,
      unitNm: nmPerUnit(this.#unit),
      budget: this.#budget,
      attributes: this.#attributes.ofAperture(),
      error: (reason) => this.#error(reason),
      note: (reason) => this.#note(reason),
    })
    if (aperture === null) return
    if (this.#apertures.has(aperture.code))
      this.#error(`aperture D${aperture.code} is defined twice: the later one holds from here on`)
    this.#apertures.set(aperture.code, aperture)
  }

  /** Takes its words up to the closing percent sign. */
  #takeMacro(text: string): void {
    const words = this.#words
    const name = text.slice(2).trim()
    const { statement } = words
    const statements: string[] = []
    let isTooLong = false
    const { line, column } = words
    this.#counts.macros += 1
    const { bytes } = words
    // A closing percent sign before the next word ends the statement.
    while (!words.isUnended && !this.#closesNext() && words.next()) {
      if (!words.isExtended || words.statement !== statement) {
        this.#error(`macro ${quote(name)} has no closing percent sign`)
        if (words.isExtended) this.#readExtended()
        else this.#readOrdinary(words.start)
        return
      }
      if (statements.length >= MOST_MACRO_STATEMENTS) isTooLong = true
      else statements.push(words.text())
      if (words.end >= bytes.length) break
    }
    if (isTooLong) {
      this.#auditor.error(
        line,
        column,
        `macro ${quote(name)} has more than ${MOST_MACRO_STATEMENTS} statements: not used`,
      )
      return
    }
    if (!/^[A-Za-z_.$][\w.$-]*$/.test(name)) this.#auditor.error(line, column, `${quote(name)} is no name for a macro`)
    if (this.#macros.has(name))
      this.#auditor.error(line, column, `macro ${quote(name)} is defined twice: the later one holds from here on`)
    this.#macros.set(name, { name, statements })
  }

  /** Whether the statement that the present word stands in ends behind it. */
  #closesNext(): boolean {
    const { bytes, end } = this.#words
    let at = end + 1
    while (at < bytes.length && ((bytes[at] ?? 0) <= 0x20 || bytes[at] === 0x2a)) at += 1
    return at >= bytes.length || bytes[at] === 0x25
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
    const unitNm = this.#unit === null ? Number.NaN : nmPerUnit(this.#unit)
    const steps = [Number(found?.[3] ?? 0) * unitNm, Number(found?.[4] ?? 0) * unitNm] as const
    if (found === null || countX < 1 || countY < 1 || !steps.every((step) => Math.abs(step) <= LARGEST_COORDINATE_NM)) {
      this.#error(`${quote(text)} is no step and repeat: not repeated`)
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
    else this.#error(`${quote(text)}: not followed`)
    drawing.turnApertures()
  }
}
