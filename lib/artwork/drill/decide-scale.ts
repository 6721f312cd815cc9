import type { Question } from '../audit'
import { nmPerUnit, type Unit } from '../gerber/format'
import type { Digits, DrillAnswers, Zeros } from './drill-reading'
import type { DrillScan } from './scan-drill'

/** How the numbers of a drill file are read, and why. */
export interface DrillScale {
  readonly unit: Unit | null
  readonly zeros: Zeros | null
  readonly digits: Digits | null
  readonly decisions: readonly string[]
  readonly questions: readonly Question[]
}

/** What the format has taken ever since where a file is silent (XNC specification and common practice, from memory). */
const USUAL_DIGITS: Readonly<Record<Unit, Digits>> = { inch: [2, 4], mm: [3, 3] }
/** Others that programs write, tried against where the circuit lies. */
const OTHER_DIGITS: Readonly<Record<Unit, readonly Digits[]>> = {
  inch: [
    [2, 5],
    [2, 6],
    [3, 4],
    [2, 3],
  ],
  mm: [
    [4, 4],
    [3, 4],
    [4, 3],
    [3, 5],
    [4, 2],
    [3, 2],
  ],
}
/** Holes reach over the known extent by this at most, in tooling strips. */
const MARGIN_NM = 5_000_000

/** The header decides, then what somebody answered, then the look of the numbers, then where the circuit lies; what is left is asked. */
export function decideScale(scan: DrillScan, answers: DrillAnswers): DrillScale {
  const decisions: string[] = []
  const questions: Question[] = []
  const unit = scan.unit ?? answers.unit ?? null
  if (scan.unit !== null) decisions.push(`The header says ${scan.unit}.`)
  else if (unit !== null) decisions.push(`The unit is ${unit}, as answered: the file does not say.`)
  else questions.push({ about: 'unit', text: 'The file does not say whether it is in mm or inches.', taken: null })

  const numbers = [...scan.xs, ...scan.ys].map((number) => number.replace(/^[+-]/, ''))
  const withoutPoint = numbers.filter((number) => !number.includes('.'))
  if (withoutPoint.length === 0) {
    if (numbers.length > 0)
      decisions.push('Each coordinate has its decimal point, which decides whatever the header says.')
    return { unit, zeros: 'decimal', digits: null, decisions, questions }
  }
  if (unit === null) return { unit, zeros: scan.zeros, digits: scan.digits, decisions, questions }

  let zeros = scan.zeros ?? answers.zeros ?? null
  if (scan.zeros !== null)
    decisions.push(
      `The header says that ${scan.zeros === 'leading kept' ? 'leading zeros are kept (LZ)' : 'trailing zeros are kept (TZ)'}.`,
    )
  else if (zeros !== null) decisions.push(`Zeros: ${zeros}, as answered.`)
  else zeros = zerosFromLook(withoutPoint, decisions)

  let digits = scan.digits ?? answers.digits ?? null
  if (scan.digits !== null) decisions.push(`${scan.digits.join('.')} digits by ${scan.digitsFrom}.`)
  else if (digits !== null) decisions.push(`${digits.join('.')} digits, as answered.`)

  if (zeros === null || digits === null) {
    const placed = placeInCircuit(scan, unit, zeros, digits, answers)
    if (placed !== null) {
      decisions.push(placed.reason)
      zeros = placed.zeros
      digits = placed.digits
    }
  }
  if (zeros === null) {
    questions.push({
      about: 'zeros',
      text: 'The file does not say which zeros are left out, and its numbers read either way.',
      taken: null,
    })
    return { unit, zeros, digits, decisions, questions }
  }
  if (digits === null) {
    const usual = USUAL_DIGITS[unit]
    const isByTools = scan.toolDecimals !== null && scan.toolDecimals > usual[1] && scan.toolDecimals <= 6
    digits = isByTools ? [usual[0], scan.toolDecimals ?? usual[1]] : usual
    const why = isByTools ? 'as many decimals as the tool diameters have' : `usual for ${unit}`
    const taken = `${digits.join('.')} digits, ${why}`
    decisions.push(`${taken}: the file does not say.`)
    questions.push({
      about: 'format',
      text: 'The file does not say how many digits stand before and after the decimal point.',
      taken,
    })
  }
  return { unit, zeros, digits, decisions, questions }
}

function zerosFromLook(numbers: readonly string[], decisions: string[]): Zeros | null {
  const isPadded = numbers.some((number) => number.length > 1 && number.startsWith('0'))
  const isEnded = numbers.some((number) => number.length > 1 && number.endsWith('0'))
  const length = numbers[0]?.length ?? 0
  if (isPadded && !isEnded) {
    decisions.push('Leading zeros are kept: numbers begin with zeros and none ends with one.')
    return 'leading kept'
  }
  if (isEnded && !isPadded) {
    decisions.push('Trailing zeros are kept: numbers end with zeros and none begins with one.')
    return 'trailing kept'
  }
  if (isPadded && numbers.every((number) => number.length === length)) {
    decisions.push('All numbers have all their digits, so that nothing is left out.')
    return 'trailing kept'
  }
  return null
}

interface Placed {
  readonly zeros: Zeros
  readonly digits: Digits
  readonly reason: string
}

/** The reading under which all holes lie in the circuit; null where none or more than one does. */
function placeInCircuit(
  scan: DrillScan,
  unit: Unit,
  zeros: Zeros | null,
  digits: Digits | null,
  { circuitNm }: DrillAnswers,
): Placed | null {
  if (circuitNm === undefined) return null
  const [minX, minY, maxX, maxY] = circuitNm
  const fits: Placed[] = []
  const seen = new Set<string>()
  for (const tryZeros of zeros === null ? (['leading kept', 'trailing kept'] as const) : [zeros]) {
    for (const tryDigits of digits === null ? [USUAL_DIGITS[unit], ...OTHER_DIGITS[unit]] : [digits]) {
      const toNm = makeToNm(unit, tryZeros, tryDigits)
      const [lowX, highX] = rangeOf(scan.xs, toNm)
      const [lowY, highY] = rangeOf(scan.ys, toNm)
      // Two writings of one reading count once.
      const key = [lowX, highX, lowY, highY].join()
      if (seen.has(key)) continue
      seen.add(key)
      const isIn =
        lowX >= minX - MARGIN_NM && highX <= maxX + MARGIN_NM && lowY >= minY - MARGIN_NM && highY <= maxY + MARGIN_NM
      const share = Math.max((highX - lowX) / (maxX - minX), (highY - lowY) / (maxY - minY))
      // Anything small enough lies in the circuit: holes spread over a good part of it.
      if (isIn && share > 0.15) {
        const reason = `${tryDigits.join('.')} digits, ${tryZeros}: the only reading under which the holes lie in the circuit.`
        fits.push({ zeros: tryZeros, digits: tryDigits, reason })
      }
    }
  }
  const [only] = fits
  return fits.length === 1 && only !== undefined ? only : null
}

function rangeOf(numbers: readonly string[], toNm: (number: string) => number): [number, number] {
  let [low, high] = [0, 0]
  for (const [at, number] of numbers.entries()) {
    const value = toNm(number)
    low = at === 0 ? value : Math.min(low, value)
    high = at === 0 ? value : Math.max(high, value)
  }
  return [low, high]
}

/** Nanometres of a number as written; NaN where it is no number. A decimal point decides, whatever the header states. */
export function makeToNm(unit: Unit, zeros: Zeros, digits: Digits | null): (written: string) => number {
  const unitNm = nmPerUnit(unit)
  return (written) => {
    if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(written)) return Number.NaN
    if (written.includes('.') || zeros === 'decimal' || digits === null) return Math.round(Number(written) * unitNm)
    const [whole, decimal] = digits
    const count = written.replace(/^[+-]/, '').length
    const power = zeros === 'leading kept' ? whole - count : -decimal
    return Math.round(Number(written) * 10 ** power * unitNm)
  }
}
