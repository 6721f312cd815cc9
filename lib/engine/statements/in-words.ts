/**
 * Facts that people write into names and notes, each with the words that mark it: without them a number is not read. What stands in a text is
 * never taken as the design's value; it is only held against it.
 */
const NUMBER = String.raw`(\d+(?:[.,]\d+)?)`
const DEGREE = String.raw`(?:°|º|deg(?:rees?)?\b)`

/** A fact that texts may state. */
interface Fact {
  readonly patterns: readonly RegExp[]
  /** What every match holds: most texts do without it, and are not searched. */
  readonly mark: RegExp
}

const RADIUS: Fact = {
  patterns: [
    new RegExp(String.raw`\b(?:inside\s+)?radius\s*(?:of|is|=|:)?\s*${NUMBER}\s*mm\b`, 'giu'),
    new RegExp(String.raw`\b${NUMBER}\s*mm\s+(?:inside\s+)?radius\b`, 'giu'),
    new RegExp(String.raw`\bR\s*=?\s*${NUMBER}\s*mm\b`, 'gu'),
  ],
  mark: /mm/iu,
}
const ANGLE: Fact = {
  patterns: [new RegExp(String.raw`\b(?:by|through|to|bent|folded|at)\s+${NUMBER}\s*${DEGREE}(?!\s*C)`, 'giu')],
  mark: /\d\s*[°ºd]/iu,
}
const CYCLES: Fact = {
  patterns: [/(?<![\d.,])(\d{1,3}(?:[ ,]\d{3})+|\d+(?:\.\d+)?)\s*(million\s+)?(?:flex(?:ing)?\s+)?cycles\b/giu],
  mark: /cycles/iu,
}
const CLASS: Fact = { patterns: [/\bclass[\s-]+([123])\b(?![.,]\d|\s*(?:mm|um|µm|%))/giu], mark: /class/iu }
const TYPE: Fact = { patterns: [/\btype[\s-]+([1-5])\b(?![.,]\d|\s*(?:mm|um|µm|%))/giu], mark: /type/iu }
const LAYERS: Fact = {
  patterns: [/\b(one|two|three|four|five|six|seven|eight|\d{1,2})[\s-]+(?:conductor[\s-]+)?layers?\b/giu],
  mark: /layer/iu,
}
const THICKNESS: Fact = {
  patterns: [new RegExp(String.raw`(?<![\d.,])${NUMBER}\s*(?:µm|μm|um|micron)\b`, 'giu')],
  mark: /\d\s*[µμum]/iu,
}
const REVISION: Fact = { patterns: [/\brev(?:ision)?[\s._-]*([A-Z]|\d{1,2})(?![\w])/giu], mark: /rev/iu }
const HOTTEST: Fact = {
  patterns: [new RegExp(String.raw`(?:up\s+)?to\s+\+?${NUMBER}\s*${DEGREE}?\s*C\b`, 'giu')],
  mark: /to\s+\+?\d/iu,
}

const SMALL_NUMBERS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight']

function readAll(text: string, { patterns, mark }: Fact): RegExpMatchArray[] {
  return mark.test(text) ? patterns.flatMap((pattern) => [...text.matchAll(pattern)]) : []
}

const toNumber = (digits: string | undefined): number => Number((digits ?? '').replace(',', '.'))

const numbersIn = (fact: Fact) => (text: string) => readAll(text, fact).map((match) => toNumber(match[1]))

/** Millimetres. */
export const readRadii = numbersIn(RADIUS)
/** Degrees of a bend's angle. */
export const readAngles = numbersIn(ANGLE)
/** The digit of a performance class. */
export const readClasses = numbersIn(CLASS)
/** The digit of a circuit type. */
export const readTypes = numbersIn(TYPE)
/** Micrometres. */
export const readThicknesses = numbersIn(THICKNESS)
/** Degrees Celsius at the hot end of a range. */
export const readHottest = numbersIn(HOTTEST)

export function readCycles(text: string): number[] {
  return readAll(text, CYCLES).map(
    (match) => Number((match[1] ?? '').replace(/[ ,]/g, '')) * (match[2] === undefined ? 1 : 1e6),
  )
}

export function readLayerCounts(text: string): number[] {
  return readAll(text, LAYERS).map((match) => {
    const word = (match[1] ?? '').toLowerCase()
    const at = SMALL_NUMBERS.indexOf(word)
    return at < 0 ? Number(word) : at + 1
  })
}

/** Letters or numbers of revisions, in capitals. */
export function readRevisions(text: string): string[] {
  // An underscore is a letter to the pattern's end of a word: file names use it as a blank.
  return readAll(text.replaceAll('_', ' '), REVISION).map((match) => (match[1] ?? '').toUpperCase())
}

/** `L3` at the start of a layer's name is its number. */
export function readLayerNumber(name: string): number | null {
  const match = /^L\s?(\d{1,2})(?!\d)/iu.exec(name.trim())
  return match === null ? null : Number(match[1])
}

/** `60 x 20 mm`, as a pair of lengths, the longer first. Two numbers with their unit: a grid of parts has none. */
export function readSizesMm(text: string): [number, number][] {
  return [
    ...text.matchAll(/(?<![\d.,])(\d+(?:[.,]\d+)?)\s*(?:mm)?[\s_]*[x×][\s_]*(\d+(?:[.,]\d+)?)[\s_]*mm(?![a-z])/giu),
  ].map((match) => {
    const [a, b] = [toNumber(match[1]), toNumber(match[2])]
    return [Math.max(a, b), Math.min(a, b)]
  })
}
