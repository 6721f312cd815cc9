import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { digitsAsEntered, parseNumber } from '@/lib/engine/units'

describe('parseNumber', () => {
  it.each([
    ['0.15', 0.15],
    [' .5 ', 0.5],
    ['2e6', 2_000_000],
    ['2 000 000', 2_000_000],
    ['2\u00a0000', 2000],
    ['-40', -40],
    ['−40', -40],
    ['2e−3', 0.002],
  ])('reads %s', (text, value) => {
    expect(parseNumber(text)).toEqual({ ok: true, value })
  })

  it.each([
    ['', 'Enter a number.'],
    ['1,5', '"1,5" contains a comma: write decimals with a point.'],
    ['1,000', '"1,000" contains a comma: write decimals with a point.'],
    ['about 3', '"about 3" is not a number.'],
    ['0x10', '"0x10" is not a number.'],
    ['2 00', '"2 00" is not a number.'],
    ['-', '"-" is not a number.'],
    ['− 250', '"− 250" is not a number.'],
    ['1e999', '"1e999" is too large.'],
    ['Infinity', '"Infinity" is not a number.'],
  ])('refuses %j', (text, message) => {
    expect(parseNumber(text)).toEqual({ ok: false, message })
  })

  it('reads back what is written of a number, sign included', () => {
    fc.assert(
      fc.property(fc.double({ min: -99_999, max: 99_999, noNaN: true }), (value) => {
        // Below 1e-4 a power of ten is written, which nobody types back.
        fc.pre(value === 0 || Math.abs(value) >= 1e-4)
        expect(parseNumber(digitsAsEntered(value))).toEqual({ ok: true, value: value + 0 })
      }),
    )
  })
})
