import { Auditor, type Issue, quote } from '../audit'
import { LARGEST_COORDINATE_NM } from '../limits'

/** A place that electrical test reaches: a pad or hole and the net that it belongs to. */
export interface NetPoint {
  readonly net: string
  readonly part: string
  readonly pin: string
  readonly xNm: number
  readonly yNm: number
  readonly holeNm: number | null
  readonly isPlated: boolean | null
  /** 0 where both sides reach it, else the layer. */
  readonly access: number | null
  readonly widthNm: number | null
  readonly heightNm: number | null
  readonly rotationDeg: number | null
  readonly line: number
}

/** A conductor or the outline, as corners in order. */
interface NetPath {
  readonly net: string
  readonly layer: number | null
  readonly widthNm: number | null
  readonly pointsNm: readonly number[]
  readonly line: number
}

export interface NetlistReading {
  readonly kind: 'netlist'
  readonly points: readonly NetPoint[]
  readonly conductors: readonly NetPath[]
  readonly outlines: readonly NetPath[]
  /** Names of nets in the order of the file, whole where it gives short names for long ones. */
  readonly nets: readonly string[]
  readonly issues: readonly Issue[]
}

const MOST_RECORDS = 2_000_000

/**
 * Reads IPC-D-356 and 356A (columns by the standard, from memory): 317 and 327 are holes and pads, 367 holes without a net, 378 conductors, 389 the outline; records that
 * begin with 0 go on with the one before. `P UNITS CUST 0` is 0.0001 inch, `CUST 1` 0.001 mm, `CUST 2` 0.0001 inch with radians.
 */
export function readNetlist(bytes: Uint8Array): NetlistReading {
  return new NetlistReader(bytes).read()
}

class NetlistReader {
  readonly #auditor = new Auditor()
  readonly #points: NetPoint[] = []
  readonly #conductors: NetPath[] = []
  readonly #outlines: NetPath[] = []
  readonly #nets = new Set<string>()
  readonly #longNames = new Map<string, string>()
  #stepNm: number | null = null
  #degreesPerStep = 1
  #line = 0
  #isEnded = false
  /** The conductor or outline that is being read, across its records. */
  #path: { kind: string; head: string; rest: string; line: number } | null = null

  constructor(private readonly bytes: Uint8Array) {}

  read(): NetlistReading {
    for (const line of linesOfRaw(new TextDecoder().decode(this.bytes).replace(/\r\n?/g, '\n'))) {
      this.#line += 1
      if (this.#line > MOST_RECORDS) {
        this.#error(`more than ${MOST_RECORDS} records: the rest is not read`)
        break
      }
      if (line.trim() !== '' && !this.#isEnded) this.#readRecord(line)
    }
    this.#finishPath()
    if (!this.#isEnded) this.#error('the netlist has no 999 at its end: it may have been cut off')
    return {
      kind: 'netlist',
      points: this.#points,
      conductors: this.#conductors,
      outlines: this.#outlines,
      nets: [...this.#nets],
      issues: this.#auditor.finish(),
    }
  }

  #error(reason: string): undefined {
    this.#auditor.error(this.#line, 1, reason)
  }

  #readRecord(line: string): undefined {
    const code = line.slice(0, 3)
    if (/^0\d\d$/.test(code)) {
      if (this.#path === null) this.#error(`${quote(line)} goes on with nothing`)
      else this.#path.rest += ` ${line.slice(3)}`
      return
    }
    this.#finishPath()
    if (line.startsWith('C') || line.startsWith('c')) return
    if (line.startsWith('P')) return this.#readParameter(line)
    if (code === '999') {
      this.#isEnded = true
      return
    }
    if (!/^3\d\d$/.test(code)) return this.#error(`${quote(line)} is not a record`)
    if (this.#stepNm === null) {
      this.#error('the netlist states no unit (P UNITS) before its first record: coordinates cannot be read')
      this.#stepNm = Number.NaN
    }
    if (Number.isNaN(this.#stepNm)) return
    if (code === '378' || code === '389') {
      this.#path = { kind: code, head: line, rest: line.slice(20), line: this.#line }
      return
    }
    if (['317', '327', '337', '347', '307', '367'].includes(code)) return this.#readPoint(code, line)
    this.#auditor.noteOnce(this.#line, 1, `records ${code} are not used`)
  }

  #readParameter(line: string): undefined {
    const words = line.slice(1).trim()
    const units = /^UNITS\s+(SI|CUST)\s*([0-2])?/.exec(words)
    if (units !== null) {
      this.#stepNm = units[1] === 'SI' || units[2] === '1' ? 1000 : 2540
      this.#degreesPerStep = units[2] === '2' ? 180 / Math.PI : 1
      return
    }
    const name = /^(NNAME\S*)\s+(\S+)/.exec(words)
    if (name !== null) this.#longNames.set(name[1] ?? '', name[2] ?? '')
  }

  #netOf(line: string): string {
    const short = line.slice(3, 17).trim()
    const net = this.#longNames.get(short) ?? short
    if (net !== '' && net !== 'N/C') this.#nets.add(net)
    return net
  }

  #readPoint(code: string, line: string): undefined {
    const fields = line.slice(31)
    const number = (pattern: RegExp) => {
      const found = pattern.exec(fields)
      return found === null ? null : Number(found[1])
    }
    const step = this.#stepNm ?? Number.NaN
    const nm = (value: number | null) => (value === null ? null : Math.round(value * step))
    const place = /X\s*([+-]?\s*\d{1,7})\s*Y\s*([+-]?\s*\d{1,7})/.exec(fields)
    if (place === null) return this.#error(`${quote(line)} has no place`)
    const [xNm, yNm] = [1, 2].map((at) => Math.round(Number((place[at] ?? '').replace(/\s/g, '')) * step))
    if (xNm === undefined || yNm === undefined || !(Math.max(Math.abs(xNm), Math.abs(yNm)) <= LARGEST_COORDINATE_NM))
      return this.#error(`${quote(line)}: a place beyond 2 m`)
    const hole = /D\s*(\d{1,4})\s*([PU])?/.exec(fields)
    const size = fields.slice(place.index + place[0].length)
    const turn = number(/R\s*(\d{1,3})/)
    this.#points.push({
      net: code === '367' ? '' : this.#netOf(line),
      part: line.slice(20, 26).trim(),
      pin: line.slice(27, 31).trim(),
      ...{ xNm, yNm },
      holeNm: hole === null ? null : nm(Number(hole[1])),
      isPlated: hole?.[2] === undefined ? (code === '367' ? false : null) : hole[2] === 'P',
      access: number(/A\s*(\d{1,2})/),
      widthNm: nm(firstNumber(/X\s*(\d{1,4})/, size)),
      heightNm: nm(firstNumber(/Y\s*(\d{1,4})/, size)),
      rotationDeg: turn === null ? null : turn * this.#degreesPerStep,
      line: this.#line,
    })
  }

  /** Coordinates of a conductor are modal, and a star begins another piece. */
  #finishPath(): undefined {
    const path = this.#path
    if (path === null) return
    this.#path = null
    const step = this.#stepNm ?? Number.NaN
    const net = path.kind === '378' ? this.#netOf(path.head) : path.head.slice(3, 17).trim()
    const layer = firstNumber(/L\s*(\d{1,2})/, path.rest)
    let x = 0
    let y = 0
    const width = /^\D*(?:L\s*\d{1,2})?\D*?X\s*(\d{1,4})(?!\d)\s*(?:Y\s*(\d{1,4})(?!\d))?\s/.exec(path.rest)
    const widthNm = path.kind === '378' && width !== null ? Math.round(Number(width[1]) * step) : null
    const drawn = widthNm === null ? path.rest : path.rest.slice(width?.[0].length ?? 0)
    for (const piece of drawn.split('*')) {
      const pointsNm: number[] = []
      for (const [, xText, yText] of piece.matchAll(/(?=[XY])(?:X([ +-]?\d{1,7}))?(?:Y([ +-]?\d{1,7}))?/g)) {
        if (xText === undefined && yText === undefined) continue
        if (xText !== undefined) x = Math.round(Number(xText) * step)
        if (yText !== undefined) y = Math.round(Number(yText) * step)
        pointsNm.push(x, y)
      }
      if (pointsNm.length < 4) continue
      const list = path.kind === '378' ? this.#conductors : this.#outlines
      list.push({ net, layer, widthNm, pointsNm, line: path.line })
    }
  }
}

function firstNumber(pattern: RegExp, text: string): number | null {
  const found = pattern.exec(text)
  return found === null ? null : Number(found[1])
}

/** Lines with their spaces: columns count. */
function* linesOfRaw(text: string): Generator<string> {
  for (let at = 0; at < text.length; ) {
    let end = text.indexOf('\n', at)
    if (end < 0) end = text.length
    yield text.slice(at, end)
    at = end + 1
  }
}
