import { describe, expect, it } from 'vitest'
import { readCorners } from '@/app/_components/engineering/features/read-corners'

describe('corners pasted from a spreadsheet', () => {
  it('reads two columns, with a heading, empty lines and a repeated first corner', () => {
    expect(readCorners('x (mm)\ty (mm)\n0\t0\n\n80.5\t0\r\n80.5\t-20\n0\t0\n', 'mm')).toEqual({
      ok: true,
      verticesMm: [
        [0, 0],
        [80.5, 0],
        [80.5, -20],
      ],
    })
  })

  it('takes semicolons, commas and spaces between the columns, and a true minus', () => {
    expect(readCorners('0;0\n1 , 2\n−3   4', 'mm')).toMatchObject({
      ok: true,
      verticesMm: [
        [0, 0],
        [1, 2],
        [-3, 4],
      ],
    })
  })

  it('takes numbers in the unit that the reader chose, and in the one that a heading names', () => {
    const square = (text: string, unit: 'mm' | 'mil' | 'in') => {
      const read = readCorners(text, unit)
      return read.ok ? read.verticesMm : read.reason
    }
    const inch = [
      [0, 0],
      [25.4, 0],
      [25.4, -12.7],
    ]
    expect(square('0 0\n1 0\n1 -0.5', 'in')).toEqual(inch)
    expect(square('0 0\n1000 0\n1000 -500', 'mil')).toEqual(inch)
    expect(square('X [mil];Y [mil]\n0;0\n1000;0\n1000;-500', 'mm')).toEqual(inch)
    expect(square('x (mm), y (in)\n0,0\n1,0\n1,1', 'mm')).toBe('Line 1: the heading names more than one unit.')
  })

  it.each([
    ['0 0\n1\n2 2', 'Line 2, "1", is not a pair of numbers.'],
    ['0 0\n1 2 3\n2 2', 'Line 2, "1 2 3", is not a pair of numbers.'],
    ['0 0\n1 two\n2 2', 'Line 2, "1 two", is not a pair of numbers.'],
    ['0 0\n=1+1 2\n2 2', 'Line 2, "=1+1 2", is not a pair of numbers.'],
    ['0 0\n1 1', 'An outline has at least 3 corners.'],
    ['', 'An outline has at least 3 corners.'],
  ])('refuses %j with its line', (text, reason) => {
    expect(readCorners(text, 'mm')).toEqual({ ok: false, reason })
  })
})
