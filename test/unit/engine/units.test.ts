import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  convertEnteredLength,
  DISPLAY_LENGTH_UNITS,
  digitsOfFoilWeight,
  digitsOfRadius,
  formatLength,
  keptLength,
  type LengthUnit,
  lengthFromUm,
  parseFoilThickness,
  parseLength,
  umFromLength,
} from '@/lib/engine/units'
import { between } from './arbitrary-layers'
import { holds, PROPERTY_TIMEOUT_MS } from './seed'

/** Decimals that a computed thickness has in each unit. */
const DECIMALS = { um: 1, mm: 4, mil: 3, in: 6, uin: 0 }

const units: LengthUnit[] = ['um', 'mm', 'mil', 'in', 'uin']

describe('lengths', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it('survive conversion there and back', () => {
    holds(
      fc.property(between(-1e6, 1e6), fc.constantFrom(...units), (valueUm, unit) => {
        expect(Math.abs(umFromLength(lengthFromUm(valueUm, unit), unit) - valueUm)).toBeLessThanOrEqual(
          1e-12 * Math.max(1e-9, Math.abs(valueUm)),
        )
      }),
    )
  })

  it('are read back to half the last digit shown', () => {
    holds(
      fc.property(between(0, 1e6), fc.constantFrom(...units), (valueUm, unit) => {
        const parsed = parseLength(formatLength(valueUm, unit), 'mm')
        if (!parsed.ok) throw new Error(parsed.message)
        expect(Math.abs(parsed.valueUm - valueUm)).toBeLessThanOrEqual(
          0.500001 * 10 ** -DECIMALS[unit] * umFromLength(1, unit),
        )
      }),
    )
  })

  it.each([
    ['25', 'um', 25],
    ['25 um', 'mm', 25],
    ['25µm', 'mm', 25],
    ['25 μm', 'mm', 25],
    ['.15 mm', 'um', 150],
    ['6mil', 'mm', 152.4],
    ['1.4 mils', 'mm', 35.56],
    ['0.5"', 'mm', 12700],
    ['1 IN', 'mm', 25400],
    ['984 uin', 'mm', 24.9936],
    ['1e-3 mm', 'mm', 1],
    ['-2 um', 'mm', -2],
  ] as const)('%j with default %s is %d um', (text, unit, expectedUm) => {
    const parsed = parseLength(text, unit)
    expect(parsed.ok && parsed.valueUm).toBeCloseTo(expectedUm, 9)
  })

  it.each([
    ['', /Enter a length/],
    ['   ', /Enter a length/],
    ['0,15 mm', /comma/],
    ['1,000 um', /comma/],
    ['12 furlong', /"furlong" is not a unit/],
    ['thick', /"thick" is not a length/],
    ['1.2.3 mm', /is not a length|not a unit/],
    ['1e999 mm', /too large/],
    ['--5', /is not a length/],
    ['NaN', /is not a length/],
    ['5 constructor', /"constructor" is not a unit/],
  ])('%j is refused with a reason', (text, reason) => {
    const parsed = parseLength(text, 'mm')
    expect(parsed.ok).toBe(false)
    if (!parsed.ok) expect(parsed.message).toMatch(reason)
  })

  it('print with unit, aligned decimals and no minus zero', () => {
    expect(formatLength(35.56, 'mil')).toBe('1.400 mil')
    expect(formatLength(152.4, 'mm')).toBe('0.1524 mm')
    expect(formatLength(-0.001, 'um')).toBe('0.0 µm')
    expect(formatLength(2540, 'mil', 'plan')).toBe('100.0 mil')
  })
})

describe('stated lengths in another unit', () => {
  it('are what was stated when they are read back, whatever was stated', () => {
    holds(
      fc.property(
        fc.integer({ min: 1, max: 999_999 }),
        fc.integer({ min: -2, max: 4 }),
        fc.constantFrom(...DISPLAY_LENGTH_UNITS),
        fc.constantFrom('um' as const, 'mm' as const),
        (digits, decimals, unit, kept) => {
          const stated = Number(`${digits}e${-decimals}`)
          expect(keptLength(convertEnteredLength(stated, kept, unit), unit, kept)).toBe(stated)
        },
      ),
    )
  })

  it('a radius has three digits in each unit', () => {
    expect(DISPLAY_LENGTH_UNITS.map((unit) => digitsOfRadius(8.1234, unit))).toEqual(['8.12', '8.12', '320', '0.320'])
    expect(digitsOfRadius(null, 'mil')).toBe('–')
  })
})

describe('foil by weight', () => {
  // 34.3 um per oz/ft2: nominal thickness of the foil standard (IPC-4562), 305.15 g/m2 at 8.90 g/cm3.
  it.each([
    ['1 oz', 'um', 34.3],
    ['0.5 oz/ft2', 'mil', 17.15],
    ['1/2 oz', 'mm', 17.15],
    ['1/3 oz/ft²', 'um', 34.3 / 3],
    ['2 ounces', 'um', 68.6],
    ['2', 'oz-per-ft2', 68.6],
    ['1/2', 'oz-per-ft2', 17.15],
    ['18 um', 'oz-per-ft2', 18],
    ['1.4 mil', 'oz-per-ft2', 35.56],
    ['18', 'um', 18],
  ] as const)('%j with default %s is %d um', (text, unit, expectedUm) => {
    const parsed = parseFoilThickness(text, unit)
    expect(parsed.ok && parsed.valueUm).toBeCloseTo(expectedUm, 9)
  })

  it.each([
    ['0 oz', /more than 0 and at most 100/],
    ['101 oz', /more than 0 and at most 100/],
    ['1/0 oz', /more than 0 and at most 100/],
    ['1,5 oz', /comma/],
    ['heavy', /not a length/],
  ])('%j is refused with a reason', (text, reason) => {
    const parsed = parseFoilThickness(text, 'oz-per-ft2')
    expect(parsed.ok).toBe(false)
    if (!parsed.ok) expect(parsed.message).toMatch(reason)
  })

  it('is shown as it was entered', () => {
    for (const weight of ['0.5', '1', '2', '0.25', '1.5']) {
      const parsed = parseFoilThickness(`${weight} oz`, 'um')
      if (!parsed.ok) throw new Error(parsed.message)
      expect(digitsOfFoilWeight(parsed.valueUm)).toBe(weight)
    }
  })
})
