import type { Aperture } from '../apertures/aperture'
import { circle } from '../apertures/standard'
import { ApertureUses } from '../apertures/uses'
import { Auditor, type Question, quote } from '../audit'
import { resolveMultiQuadrant } from '../gerber/arcs'
import { Attributes } from '../gerber/attributes'
import { LARGEST_COORDINATE_NM, mostObjectsOf } from '../limits'
import { ObjectBuilder } from '../objects/object-builder'
import { ARC_CLOCKWISE, ARC_COUNTERCLOCKWISE, FLASH, LINE } from '../objects/objects'
import { UNMOVED } from '../objects/placement'
import { decideScale, makeToNm } from './decide-scale'
import type { DrillAnswers, DrillReading, DrillTool, Plating } from './drill-reading'
import { platingOfAttribute, platingOfComment, platingOfName } from './plating'
import { linesOf, scanDrill } from './scan-drill'

const MOST_COMMENTS = 60

/**
 * Reads drill and rout files: Excellon as programs write it, and XNC, its exact subset (XNC specification, from memory). Whatever the bytes are, there is an answer.
 */
export function readDrill(bytes: Uint8Array, answers: DrillAnswers = {}): DrillReading {
  return new DrillReader(bytes, answers).read()
}

interface Tool {
  readonly number: number
  readonly diameterNm: number
  readonly use: number
  plating: Plating | null
  platingFrom: string | null
  hits: number
  slots: number
  routedMoves: number
}

class DrillReader {
  readonly #auditor = new Auditor()
  readonly #text: string
  readonly #scan: ReturnType<typeof scanDrill>
  readonly #scale: ReturnType<typeof decideScale>
  readonly #toNm: ((written: string) => number) | null
  readonly #uses = new ApertureUses()
  readonly #attributes = new Attributes()
  readonly #tools = new Map<number, Tool>()
  readonly #comments: string[] = []
  readonly #file = new ObjectBuilder()
  #builder = this.#file
  readonly #mostObjects: number
  #made = 0
  #line = 0
  #x = 0
  #y = 0
  #tool: Tool | null = null
  #isRouting = false
  #isDown = false
  /** LINE, an arc, or 0 for a move with the tool up. */
  #mode = 0
  #isIncremental = false
  #isInHeader = false
  #isEnded = false
  #type: Plating | null = null
  #aperFunction: Plating | null = null
  #patternX = 0
  #patternY = 0
  #pattern: ObjectBuilder | null = null

  constructor(
    bytes: Uint8Array,
    private readonly answers: DrillAnswers,
  ) {
    // Old machines end lines with a return alone.
    this.#text = new TextDecoder().decode(bytes).replace(/\r\n?/g, '\n')
    this.#scan = scanDrill(this.#text)
    this.#scale = decideScale(this.#scan, answers)
    const { unit, zeros, digits } = this.#scale
    this.#toNm = unit === null || zeros === null ? null : makeToNm(unit, zeros, digits)
    this.#mostObjects = mostObjectsOf(bytes.length)
  }

  read(): DrillReading {
    const questions: Question[] = [...this.#scale.questions]
    for (const { text, taken } of questions)
      this.#auditor.error(1, 1, taken === null ? `${text} Without it nothing can be read.` : `${text} Taken: ${taken}.`)
    for (const line of linesOf(this.#text)) {
      this.#line += 1
      if (line === '') continue
      if (this.#isEnded) {
        this.#auditor.noteOnce(this.#line, 1, 'something follows the end of the file: not read')
        break
      }
      this.#readLine(line)
    }
    this.#endPattern()
    if (!this.#isEnded) this.#error('the file has no M30 at its end: it may have been cut off')
    const tools = this.#finishTools(questions)
    const sum = (count: (tool: DrillTool) => number) => tools.reduce((total, tool) => total + count(tool), 0)
    return {
      kind: 'drill',
      unit: this.#scale.unit,
      zeros: this.#scale.zeros,
      digits: this.#scale.digits,
      decisions: this.#scale.decisions,
      tools,
      objects: this.#file.finish(this.#uses.list, this.#attributes.sets),
      counts: {
        hits: sum(({ hits }) => hits),
        slots: sum(({ slots }) => slots),
        routes: sum(({ routedMoves }) => routedMoves),
      },
      fileAttributes: this.#attributes.file,
      comments: this.#comments,
      questions,
      issues: this.#auditor.finish(),
    }
  }

  #error(reason: string): undefined {
    this.#auditor.error(this.#line, 1, reason)
  }

  #note(reason: string): undefined {
    this.#auditor.noteOnce(this.#line, 1, reason)
  }

  /** Plating by the tool's own attribute or the comment before it, then the file's attribute, then what was answered, then the file's name. */
  #finishTools(questions: Question[]): DrillTool[] {
    const fileFunction = this.#attributes.file.get('.FileFunction') ?? ''
    const ofFile = platingOfAttribute(fileFunction)
    const ofName = platingOfName(this.answers.name ?? '')
    const tools = [...this.#tools.values()].map(({ use: _, ...tool }): DrillTool => {
      if (tool.plating !== null) return tool
      if (ofFile !== null) return { ...tool, plating: ofFile, platingFrom: 'the file’s attribute' }
      if (this.answers.plating !== undefined)
        return { ...tool, plating: this.answers.plating, platingFrom: 'an answer' }
      return ofName === null ? tool : { ...tool, plating: ofName, platingFrom: 'the file’s name' }
    })
    const open = tools.filter(
      ({ plating, hits, slots, routedMoves }) => plating === null && hits + slots + routedMoves > 0,
    )
    if (open.length > 0) {
      const which = open
        .map(({ number }) => `T${number}`)
        .slice(0, 12)
        .join(', ')
      questions.push({ about: 'plating', text: `Nothing says whether the holes of ${which} are plated.`, taken: null })
    }
    return tools
  }

  #readLine(line: string): undefined {
    if (line.startsWith(';')) return this.#takeComment(line)
    if (line === 'M48') {
      this.#isInHeader = true
      return
    }
    if (line === '%' || line === 'M95') {
      this.#isInHeader = false
      return
    }
    const stated = /^(METRIC|INCH|M71|M72)\b/.exec(line)?.[1]
    if (stated !== undefined) {
      const unit = stated === 'METRIC' || stated === 'M71' ? 'mm' : 'inch'
      if (unit !== this.#scale.unit)
        this.#error(`${stated} after ${this.#scale.unit} was stated: ${this.#scale.unit} is kept`)
      return
    }
    if (/^(FMAT|VER|DETECT|ATC|CCW|CW|BLKD|SBK|SG|OSTOP|OM48|TCST|UP|VER|Z|BLKD)\b/.test(line)) {
      if (line === 'FMAT,1') this.#error('FMAT,1, the oldest command set: its codes may mean something else')
      return
    }
    if (/^ICI/.test(line)) {
      this.#isIncremental = /ON/.test(line)
      return
    }
    const tool = /^T(\d{1,6})/.exec(line)
    if (tool !== null) return this.#takeTool(Number(tool[1]), line)
    if (this.#isInHeader && !/^[GMXYR]/.test(line)) return this.#note(`${quote(line)} in the header: ignored`)
    this.#readCommands(line)
  }

  #takeComment(line: string): undefined {
    const attribute = /^;\s*#@!\s*(T[FAOD].*)$/.exec(line)
    if (attribute !== null) {
      const text = attribute[1] ?? ''
      this.#attributes.take(text, this.#line, 1, this.#auditor)
      const ofTool = /^TA\.AperFunction,(.*)$/.exec(text)
      if (ofTool !== null) this.#aperFunction = platingOfAttribute(ofTool[1] ?? '')
      if (/^TD/.test(text)) this.#aperFunction = null
      return
    }
    this.#type = platingOfComment(line) ?? this.#type
    if (this.#comments.length < MOST_COMMENTS) this.#comments.push(line.slice(1, 200).trim())
  }

  #takeTool(number: number, line: string): undefined {
    const size = /C([+-]?[\d.]+)/.exec(line)
    if (size !== null) {
      const { unit } = this.#scale
      const value = Number(size[1])
      if (unit === null) return
      const diameterNm = (unit === 'mm' ? 1e6 : 25.4e6) * value
      if (!(diameterNm > 0 && diameterNm <= LARGEST_COORDINATE_NM))
        return this.#error(`${quote(line)}: no diameter of a tool`)
      const attributes = this.#attributes.ofAperture()
      const aperture: Aperture = { code: number, kind: 'circle', name: 'C', pieces: [circle(diameterNm)], attributes }
      const known = this.#tools.get(number)
      if (known !== undefined && known.diameterNm !== diameterNm)
        this.#error(`tool T${number} is defined twice with different diameters: the later one holds from here on`)
      const plating = this.#aperFunction ?? this.#type
      const platingFrom =
        this.#aperFunction !== null ? 'the tool’s attribute' : this.#type !== null ? 'a comment before the tool' : null
      const use = this.#uses.indexOf(aperture, false, 0, 1)
      // Another size under the same number is another tool from here on: it keeps the counts of its own.
      if (known !== undefined) this.#tools.set(-this.#tools.size - 1, known)
      this.#tools.set(number, {
        ...{ number, diameterNm, use, plating, platingFrom },
        hits: 0,
        slots: 0,
        routedMoves: 0,
      })
      if (this.#isInHeader) return
    }
    if (number === 0) {
      this.#tool = null
      return
    }
    this.#tool = this.#tools.get(number) ?? null
    if (this.#tool === null && this.#scale.unit !== null) this.#error(`tool T${number} has no diameter`)
  }

  #readCommands(line: string): undefined {
    const slot = /^((?:X[+-]?[\d.]+)?(?:Y[+-]?[\d.]+)?)G85((?:X[+-]?[\d.]+)?(?:Y[+-]?[\d.]+)?)$/.exec(line)
    if (slot !== null) {
      const from = this.#target(slot[1] ?? '')
      if (from === null) return
      ;[this.#x, this.#y] = from
      const to = this.#target(slot[2] ?? '')
      if (to === null) return
      this.#cut(LINE, to, 0, 0, 'slots')
      return
    }
    let rest = line
    const repeat = /^R(\d{1,9})(.*)$/.exec(rest)
    if (repeat !== null) return this.#repeat(Number(repeat[1]), repeat[2] ?? '')
    for (let code = /^([GM])(\d{1,3})/.exec(rest); code !== null; code = /^([GM])(\d{1,3})/.exec(rest)) {
      rest = rest.slice(code[0].length)
      const number = Number(code[2])
      if (code[1] === 'M') {
        if (number === 2 && rest !== '') return this.#stepPattern(rest)
        if (this.#takeM(number)) return
      } else if (this.#takeG(number, rest)) return
    }
    if (rest === '') return
    if (!/^([XYIJA][+-]?[\d.]+)+$/.test(rest)) return this.#error(`${quote(line)} is not a command`)
    const target = this.#target(rest)
    if (target === null) return
    if (this.#isRouting && this.#mode === 0) [this.#x, this.#y] = target
    else if (!this.#isRouting) this.#hit(target)
    else if (!this.#isDown && this.#scan.putsToolDown) {
      this.#note('a routed move with the tool up: it cuts nothing')
      ;[this.#x, this.#y] = target
    } else this.#rout(target, rest)
  }

  /** Whether the line is done with. */
  #takeG(number: number, rest: string): boolean {
    if (number <= 3) {
      this.#isRouting = true
      this.#mode = number === 0 ? 0 : number === 1 ? LINE : number === 2 ? ARC_CLOCKWISE : ARC_COUNTERCLOCKWISE
      if (number !== 0 && !this.#scan.putsToolDown) this.#note('routed moves without M15, tool down: read as cuts')
      return false
    }
    if (number === 5 || number === 81) {
      this.#isRouting = false
      this.#isDown = false
      return false
    }
    if (number === 90 || number === 91) {
      this.#isIncremental = number === 91
      return false
    }
    if (number === 93) {
      if (/[1-9]/.test(rest)) this.#error('G93 moves the zero point: not followed')
      return true
    }
    if ([4, 40, 41, 42].includes(number)) {
      if (number > 40) this.#note('G41 and G42, a cutter beside its path: the path itself is drawn')
      return number === 4
    }
    this.#error(`there is no G${number} that is followed: passed over`)
    return true
  }

  #takeM(number: number): boolean {
    if (number === 15) {
      this.#isDown = true
      this.#isRouting = true
    } else if (number === 16 || number === 17) this.#isDown = false
    else if (number === 30 || number === 0) this.#isEnded = true
    else if (number === 25) {
      this.#endPattern()
      this.#builder = new ObjectBuilder()
      ;[this.#patternX, this.#patternY] = [0, 0]
    } else if (number === 1) this.#closePattern()
    else if (number === 8) this.#endPattern()
    else if (number === 97 || number === 98) {
      this.#error('holes in the form of letters (M97, M98) are not drawn')
      return true
    } else if (number === 47 || number === 45) return true
    return false
  }

  #target(written: string): [number, number] | null {
    const toNm = this.#toNm
    if (toNm === null) return null
    const read = (axis: 'X' | 'Y', now: number): number => {
      const found = new RegExp(`${axis}([+-]?[\\d.]+)`).exec(written)
      if (found === null) return now
      return toNm(found[1] ?? '') + (this.#isIncremental ? now : 0)
    }
    const [x, y] = [read('X', this.#x), read('Y', this.#y)]
    if (Number.isNaN(x) || Number.isNaN(y)) {
      this.#error(`${quote(written)} is not a coordinate`)
      return null
    }
    if (Math.max(Math.abs(x), Math.abs(y)) > LARGEST_COORDINATE_NM) {
      this.#error(`${quote(written)}: a coordinate beyond 2 m`)
      return null
    }
    return [x, y]
  }

  #mayAdd(count: number): boolean {
    if (this.#made + count > this.#mostObjects) {
      this.#note(`the file drills more than ${this.#mostObjects} holes: the rest is not read`)
      return false
    }
    this.#made += count
    return true
  }

  #hit([x, y]: readonly [number, number]): undefined {
    ;[this.#x, this.#y] = [x, y]
    const tool = this.#tool
    if (tool === null) return this.#error('a hole without a tool: left out')
    if (!this.#mayAdd(1)) return
    tool.hits += 1
    this.#builder.add(FLASH, false, tool.use, this.#setOf(tool), this.#line, x, y)
  }

  #rout(target: readonly [number, number], written: string): undefined {
    const value = (letter: string) => {
      const found = new RegExp(`${letter}([+-]?[\\d.]+)`).exec(written)
      return found === null || this.#toNm === null ? null : this.#toNm(found[1] ?? '')
    }
    const [x, y] = target
    if (this.#mode === LINE) return this.#cut(LINE, target, 0, 0, 'routedMoves')
    const [i, j, radius] = [value('I'), value('J'), value('A')]
    if (i !== null || j !== null) return this.#cut(this.#mode, target, i ?? 0, j ?? 0, 'routedMoves')
    const [dx, dy] = [x - this.#x, y - this.#y]
    const chord = Math.hypot(dx, dy)
    if (radius === null || chord === 0 || radius < chord / 2 - 2000) {
      this.#error('an arc without a centre or radius that fits its ends: read as a straight cut')
      return this.#cut(LINE, target, 0, 0, 'routedMoves')
    }
    // Arcs by radius turn a half circle at most (common practice): the centre lies to the right going with the clock.
    const off = Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4)) * (this.#mode === ARC_CLOCKWISE ? -1 : 1)
    this.#cut(this.#mode, target, dx / 2 - (dy / chord) * off, dy / 2 + (dx / chord) * off, 'routedMoves')
  }

  #cut(
    kind: number,
    [x, y]: readonly [number, number],
    i: number,
    j: number,
    counts: 'slots' | 'routedMoves',
  ): undefined {
    const [fromX, fromY] = [this.#x, this.#y]
    ;[this.#x, this.#y] = [x, y]
    const tool = this.#tool
    if (tool === null) return this.#error('a cut without a tool: left out')
    if (!this.#mayAdd(1)) return
    tool[counts] += 1
    const set = this.#setOf(tool)
    if (kind === LINE) {
      this.#builder.add(LINE, false, tool.use, set, this.#line, fromX, fromY, x, y)
      return
    }
    const arc = resolveMultiQuadrant(fromX, fromY, x, y, i, j)
    if (!(Math.max(Math.abs(arc.centreXNm), Math.abs(arc.centreYNm)) <= LARGEST_COORDINATE_NM) || arc.radiusNm < 1) {
      this.#error('an arc without a centre that fits its ends: read as a straight cut')
      this.#builder.add(LINE, false, tool.use, set, this.#line, fromX, fromY, x, y)
      return
    }
    this.#builder.add(kind, false, tool.use, set, this.#line, fromX, fromY, x, y, arc.centreXNm, arc.centreYNm)
  }

  #setOf(tool: Tool): number {
    return this.#attributes.setFor(this.#uses.list[tool.use]?.aperture.attributes ?? [])
  }

  /** `R5X…Y…`: the last hole five times more, each a step on. */
  #repeat(count: number, written: string): undefined {
    const toNm = this.#toNm
    if (toNm === null) return
    const step = (axis: string) => {
      const found = new RegExp(`${axis}([+-]?[\\d.]+)`).exec(written)
      return found === null ? 0 : toNm(found[1] ?? '')
    }
    const [stepX, stepY] = [step('X'), step('Y')]
    const farthest = Math.max(Math.abs(this.#x + count * stepX), Math.abs(this.#y + count * stepY))
    if (!(farthest <= LARGEST_COORDINATE_NM)) return this.#error(`${count} repeats reach beyond 2 m: left out`)
    if (this.#made + count > this.#mostObjects)
      return this.#error(`${count} repeats would make more than ${this.#mostObjects} holes in this file: left out`)
    const tool = this.#tool
    if (tool === null) return this.#error('holes are repeated without a tool: left out')
    this.#made += count
    tool.hits += count
    const set = this.#setOf(tool)
    for (let at = 0; at < count; at += 1) {
      this.#x += stepX
      this.#y += stepY
      this.#builder.add(FLASH, false, tool.use, set, this.#line, this.#x, this.#y)
    }
  }

  /** M25 … M01: what was drilled is drawn, and may be repeated by M02 with an offset. */
  #closePattern(): undefined {
    if (this.#builder === this.#file) return
    this.#pattern = this.#builder
    this.#builder = this.#file
    this.#file.place(this.#pattern, UNMOVED, this.#uses.placed, this.#line)
  }

  #stepPattern(written: string): undefined {
    this.#closePattern()
    const pattern = this.#pattern
    const toNm = this.#toNm
    if (pattern === null || toNm === null) return this.#error('a pattern is repeated that did not begin')
    const step = (axis: string) => toNm(new RegExp(`${axis}([+-]?[\\d.]+)`).exec(written)?.[1] ?? '0')
    this.#patternX += step('X')
    this.#patternY += step('Y')
    if (/M[78]0/.test(written)) this.#error('a pattern that is mirrored or turned (M70, M80, M90): drawn as it is')
    if (!(Math.max(Math.abs(this.#patternX), Math.abs(this.#patternY)) <= LARGEST_COORDINATE_NM))
      return this.#error('a pattern is moved beyond 2 m: left out')
    if (!this.#mayAdd(pattern.count)) return
    this.#file.place(pattern, { ...UNMOVED, xNm: this.#patternX, yNm: this.#patternY }, this.#uses.placed, this.#line)
    const { apertures, apertureAt, kinds, count } = pattern.finish(this.#uses.list, this.#attributes.sets)
    for (let at = 0; at < count; at += 1) {
      const tool = [...this.#tools.values()].find(({ use }) => use === apertureAt[at])
      if (tool === undefined || apertures.length === 0) continue
      if (kinds[at] === FLASH) tool.hits += 1
      else tool.routedMoves += 1
    }
  }

  #endPattern(): undefined {
    this.#closePattern()
    this.#pattern = null
  }
}
