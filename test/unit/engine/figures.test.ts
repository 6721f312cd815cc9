import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  asComputed,
  asCount,
  asEntered,
  asFileSize,
  asResult,
  digitsAsComputed,
  digitsAsEntered,
  digitsOfEnteredLength,
  digitsOfResultLength,
  inSentence,
} from '@/lib/engine/units'
import { holds, PROPERTY_TIMEOUT_MS } from './seed'

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹'

/** Reads a number back as a person would type it in. */
function readBack(digits: string): number {
  const plain = digits
    .replace('−', '-')
    .replace(' × 10', 'e')
    .replaceAll('⁻', '-')
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/g, (digit) => String(SUPERSCRIPTS.indexOf(digit)))
  return Number(plain)
}

describe('as entered', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it('no number whatever loses a digit', () => {
    holds(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(readBack(digitsAsEntered(value)) === value).toBe(true)
      }),
    )
  })

  it.each([
    [12.345, 'mm', '12.345 mm'],
    [0.0125, 'mm', '0.0125 mm'],
    [1e-3, 'mm', '0.001 mm'],
    [304.8, 'um', '304.8 µm'],
    [90, 'deg', '90°'],
    [2_000_000, 'cycles', '2 × 10⁶ cycles'],
    [1_234_567, 'cycles', '1234567 cycles'],
    [1e12, 'cycles', '1 × 10¹² cycles'],
    [-40, 'degC', '−40 °C'],
    [0, 'mm', '0 mm'],
    [1e-7, 'mm', '1 × 10⁻⁷ mm'],
  ] as const)('%d %s is %j', (value, unit, text) => {
    expect(asEntered(value, unit)).toBe(text)
  })

  it.each([
    // As the design keeps it, and with the decimal point moved: every digit.
    [12.345, 'mm', 'mm', '12.345'],
    [12.345, 'mm', 'um', '12345'],
    [0.0125, 'mm', 'um', '12.5'],
    [17.1, 'um', 'mm', '0.0171'],
    // Typed in mil: 35.56 um is 1.4 mil, by the inch of 25.4 mm.
    [35.56, 'um', 'mil', '1.4'],
    [304.8, 'um', 'in', '0.012'],
    // Not typed in mil: six digits.
    [12.345, 'mm', 'mil', '486.024'],
    [12.345, 'mm', 'in', '0.486024'],
  ] as const)('%d kept in %s, read in %s, is %s', (value, kept, unit, digits) => {
    expect(digitsOfEnteredLength(value, kept, unit)).toBe(digits)
  })

  it('a length moves its decimal point between mm and um and loses nothing', () => {
    holds(
      fc.property(fc.integer({ min: 1, max: 10_000_000 }), (tenThousandths) => {
        const valueMm = tenThousandths / 10_000
        expect(readBack(digitsOfEnteredLength(valueMm, 'mm', 'um'))).toBe(tenThousandths / 10)
      }),
    )
  })
})

describe('as computed', () => {
  it.each([
    [0.41023, 'strainPct', '0.410 %'],
    [-0.0001, 'strainPct', '0.000 %'],
    [304.54, 'thicknessUm', '304.5 µm'],
    [1.5, 'minRadiusMm', '1.50 mm'],
    [12345.6, 'momentNmm', '12346 N·mm'],
    [1_234_567, 'momentNmm', '1.23 × 10⁶ N·mm'],
    [34_123, 'lifeCycles', '34000 cycles'],
    [2_000_000, 'lifeCycles', '2 × 10⁶ cycles'],
    [123_456, 'lifeCycles', '1.2 × 10⁵ cycles'],
    [89.6, 'angleDeg', '90°'],
    [0.5, 'tick', '0.5'],
  ] as const)('%d as %s is %j', (value, figure, text) => {
    expect(asComputed(value, figure)).toBe(text)
  })

  it('what was not computed is a dash', () => {
    expect(asComputed(null, 'strainPct')).toBe('–')
    expect(digitsAsComputed(undefined, 'momentNmm')).toBe('–')
  })
})

describe('in a sentence and in results', () => {
  it.each([
    [12.345, 'mm', '12.345 mm'],
    [0.0125, 'mm', '0.0125 mm'],
    [304.8, 'um', '304.8 µm'],
    [1_250_000, 'cycles', '1.25 × 10⁶ cycles'],
    [0.4102345, 'pct', '0.41 %'],
    [304.533333, 'um', '305 µm'],
    [2_123_456.7, 'cycles', '2.1 × 10⁶ cycles'],
    [0.1 + 0.2, 'mm', '0.3 mm'],
    [99.99991234, 'pct', '99.999912 %'],
  ] as const)('%d %s is %j', (value, unit, text) => {
    expect(inSentence(value, unit)).toBe(text)
  })

  it('a typed value keeps its digits among results, a computed one has those of its unit', () => {
    expect(asResult(12.345, 'mm')).toBe('12.345 mm')
    expect(asResult(0.0125, 'mm')).toBe('0.0125 mm')
    expect(asResult(0.41023456, 'pct')).toBe('0.4102 %')
    expect(digitsOfResultLength(12.345, 'mm', 'mm')).toBe('12.345')
    expect(digitsOfResultLength(12.3456789, 'mm', 'mm')).toBe('12.346')
    expect(digitsOfResultLength(304.533333, 'um', 'um')).toBe('304.5')
  })
})

it('counts and sizes of files', () => {
  expect(asCount(2_000_000)).toBe('2\u00a0000\u00a0000')
  expect(asCount(999)).toBe('999')
  expect(asFileSize(512)).toBe('512 bytes')
  expect(asFileSize(1024 * 1024)).toBe('1.0 MiB')
  expect(asFileSize(2048 * 1024 * 1024)).toBe('2048 MiB')
})
