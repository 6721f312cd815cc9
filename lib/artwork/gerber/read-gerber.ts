import { Auditor, quote } from '../audit'
import { LARGEST_COORDINATE_NM, mostObjectsOf } from '../limits'
import { Attributes } from './attributes'
import { GerberDrawing, modeOfCode } from './drawing'
import { nmPerUnit } from './format'
import { Frames } from './frames'
import type { GerberAnswers, GerberCounts, GerberReading } from './gerber-reading'
import { MOST_MACRO_STATEMENTS, mostMacroWorkOf } from './macro'
import { GerberNumber } from './number'
import { GerberReport } from './report'
import { GerberScale } from './scale'
import { GerberStatements } from './statements'
import { GerberWords } from './words'

const MOST_COMMENTS = 60
const [UPPER_D, UPPER_G, UPPER_I, UPPER_J, UPPER_M, UPPER_N, UPPER_X, UPPER_Y] = [...'DGIJMNXY'].map((letter) =>
  letter.charCodeAt(0),
) as [number, number, number, number, number, number, number, number]
const [ZERO, NINE] = [0x30, 0x39]

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
  readonly #report: GerberReport
  readonly #scale: GerberScale
  readonly #statements: GerberStatements
  readonly #number = new GerberNumber()
  readonly #comments: string[] = []
  #isEnded = false
  #operation = 0

  constructor(bytes: Uint8Array, answers: GerberAnswers) {
    const words = new GerberWords(bytes)
    const [auditor, attributes, counts] = [this.#auditor, this.#attributes, this.#counts]
    const report = new GerberReport(auditor, words)
    const scale = new GerberScale(report, answers)
    const frames = new Frames(auditor, mostObjectsOf(bytes.length))
    const drawing = new GerberDrawing(frames, attributes, auditor, counts)
    const budget = { workLeft: mostMacroWorkOf(bytes.length) }
    this.#words = words
    this.#report = report
    this.#scale = scale
    this.#frames = frames
    this.#drawing = drawing
    this.#statements = new GerberStatements({
      ...{ words, report, auditor, scale, frames, attributes, drawing, counts, budget },
    })
  }

  read(): GerberReading {
    const words = this.#words
    while (!this.#isEnded && words.next()) {
      if (words.isUnended && words.end < words.bytes.length) this.#error('a command without its * at the end')
      if (words.isExtended) this.#readExtended()
      else this.#readOrdinary(words.start)
    }
    this.#finishState()
    const { unit, format, questions } = this.#scale
    const { whole, isNegative } = this.#statements
    const builder = this.#frames.finish(whole.placement(unit === null ? 0 : nmPerUnit(unit)), words.line)
    return {
      kind: 'gerber',
      unit,
      format,
      objects: builder.finish(this.#frames.uses.list, this.#attributes.sets),
      counts: this.#counts,
      fileAttributes: this.#attributes.file,
      comments: this.#comments,
      isNegative,
      questions,
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
    this.#report.error(reason)
  }

  #note(reason: string): void {
    this.#report.note(reason)
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
      at = this.#number.read(bytes, numberAt, end)
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
        const nm = this.#scale.toNm(this.#number, letter === UPPER_X || letter === UPPER_I)
        if (Number.isNaN(nm)) {
          isBad = true
          continue
        }
        hasCoordinate = true
        if (letter === UPPER_X) x = this.#statements.isIncremental ? this.#drawing.x + nm : nm
        else if (letter === UPPER_Y) y = this.#statements.isIncremental ? this.#drawing.y + nm : nm
        else if (letter === UPPER_I) i = nm
        else j = nm
        if (!isBad && Math.max(Math.abs(nm), Math.abs(x), Math.abs(y)) > LARGEST_COORDINATE_NM) {
          this.#error(`${quote(words.text())}: a coordinate beyond 2 m`)
          isBad = true
        }
        continue
      }
      if (at === numberAt) {
        this.#error(`${quote(words.text())} is not a command`)
        return
      }
      const code = this.#number.value
      if (letter === UPPER_D) {
        if (code >= 1 && code <= 3) operation = code
        else this.#select(code)
      } else if (letter === UPPER_G) this.#takeG(code)
      else if (letter === UPPER_M) {
        this.#takeM(code)
        return
      } else if (letter !== UPPER_N) {
        this.#error(`${quote(words.text())} is not a command`)
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

  #select(code: number): void {
    const aperture = this.#statements.apertures.get(code)
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
        this.#scale.setUnit(code === 70 ? 'inch' : 'mm')
        return
      case 90:
      case 91:
        this.#statements.isIncremental = code === 91
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
    const text = words.text()
    if (text.startsWith('AM')) this.#takeMacro(text)
    else if (this.#statements.take(text)) return
    // Old files put ordinary commands between percent signs.
    else if (/^[GDMXYIJ]\d|^[XYIJ][+-]/.test(text)) {
      this.#note('ordinary commands between percent signs')
      this.#readOrdinary(words.start)
    } else this.#error(`${quote(text)} is not a statement of the format`)
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
    if (!/^[A-Za-z_.$][\w.$-]*$/.test(name))
      this.#auditor.error(line, column, `${quote(name)} is not a name for a macro`)
    if (this.#statements.macros.has(name))
      this.#auditor.error(line, column, `macro ${quote(name)} is defined twice: the later one holds from here on`)
    this.#statements.macros.set(name, { name, statements })
  }

  /** Whether the statement that the present word stands in ends behind it. */
  #closesNext(): boolean {
    const { bytes, end } = this.#words
    let at = end + 1
    while (at < bytes.length && ((bytes[at] ?? 0) <= 0x20 || bytes[at] === 0x2a)) at += 1
    return at >= bytes.length || bytes[at] === 0x25
  }
}
