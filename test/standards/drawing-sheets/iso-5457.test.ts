import { describe, expect, test } from 'vitest'
import {
  FIELD_LENGTH_MM,
  getFrame,
  listReferenceFields,
  SHEET_FORMATS,
  SHEET_SIZES,
  type SheetSize,
  TITLE_BLOCK_WIDTH_MM,
} from '@/lib/drawing'

/**
 * ISO 5457:1999 (Technical product documentation, Sizes and layout of drawing sheets). Trimmed sizes are those of ISO 216;
 * drawing spaces and margins from memory; numbers of fields, their length, and the letters left out as a drawing guide
 * of 2016 quotes them from the standard.
 */
const STANDARD: Readonly<
  Record<SheetSize, { trimmed: [number, number]; space: [number, number]; fields: [across: number, down: number] }>
> = {
  A4: { trimmed: [210, 297], space: [180, 277], fields: [4, 6] },
  A3: { trimmed: [420, 297], space: [390, 277], fields: [8, 6] },
  A2: { trimmed: [594, 420], space: [564, 400], fields: [12, 8] },
}

describe.each(SHEET_SIZES)('ISO 5457: %s', (size) => {
  const format = SHEET_FORMATS[size]
  const frame = getFrame(format)

  test('trimmed size', () => {
    expect([format.widthMm, format.heightMm]).toEqual(STANDARD[size].trimmed)
  })

  test('20 mm filing margin on the left, 10 mm elsewhere', () => {
    expect(frame.x).toBe(20)
    expect(frame.y).toBe(10)
    expect(format.widthMm - frame.x - frame.width).toBe(10)
    expect(format.heightMm - frame.y - frame.height).toBe(10)
    expect([frame.width, frame.height]).toEqual(STANDARD[size].space)
  })

  test.each(['width', 'height'] as const)('fields of 50 mm from the axis of symmetry, along the %s', (along) => {
    const fields = listReferenceFields(format, along)
    const [across, down] = STANDARD[size].fields
    expect(fields).toHaveLength(along === 'width' ? across : down)
    for (const { fromMm, toMm } of fields.slice(1, -1)) expect(toMm - fromMm).toBeCloseTo(FIELD_LENGTH_MM, 9)
    expect(FIELD_LENGTH_MM).toBe(50)
    // The centring mark stands between the two middle fields, and fields follow one another without a gap.
    const middle = (along === 'width' ? format.widthMm : format.heightMm) / 2
    expect(fields[fields.length / 2]?.fromMm).toBe(middle)
    for (const [index, field] of fields.entries()) if (index > 0) expect(field.fromMm).toBe(fields[index - 1]?.toMm)
    const start = along === 'width' ? frame.x : frame.y
    expect(fields[0]?.fromMm).toBe(start)
    expect(fields.at(-1)?.toMm).toBe(start + (along === 'width' ? frame.width : frame.height))
  })

  test('letters from the top down without I and O, numbers from left to right', () => {
    const letters = listReferenceFields(format, 'height').map(({ label }) => label)
    expect(letters).toEqual([...'ABCDEFGHJKLMNP'].slice(0, letters.length))
    const numbers = listReferenceFields(format, 'width').map(({ label }) => label)
    expect(numbers).toEqual(numbers.map((_, index) => String(index + 1)))
  })
})

test('ISO 5457: a ninth and a fourteenth row are J and P: I and O are never used', () => {
  const tall = { ...SHEET_FORMATS.A2, heightMm: 841, fieldsDown: 16 }
  const letters = listReferenceFields(tall, 'height').map(({ label }) => label)
  expect(letters.join('')).toBe('ABCDEFGHJKLMNPQR')
})

test('ISO 7200:2004: the title block is 180 mm wide, so that it fits the frame of A4 (from memory)', () => {
  expect(TITLE_BLOCK_WIDTH_MM).toBe(180)
  expect(getFrame(SHEET_FORMATS.A4).width).toBe(TITLE_BLOCK_WIDTH_MM)
})
