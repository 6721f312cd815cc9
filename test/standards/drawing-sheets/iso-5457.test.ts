import { describe, expect, test } from 'vitest'
import {
  type DrawingNode,
  FIELD_LENGTH_MM,
  getFrame,
  listReferenceFields,
  PRINT_PALETTE,
  SHEET_FORMATS,
  SHEET_SIZES,
  type SheetSize,
  TITLE_BLOCK_WIDTH_MM,
} from '@/lib/drawing'
import { drawTitleBlock } from '@/lib/drawing/sheet/title-block'
import { checkTopic, input } from '../check-values'

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

/** Texts of a drawing in the order in which they are drawn. */
function listTexts(node: DrawingNode | string): string[] {
  return typeof node === 'string' ? [node] : node.children.flatMap(listTexts)
}

checkTopic('10 drawing and document content', [
  [
    /^doc-iso5457-space/,
    (check) => {
      const sizes = check.inputs.sheetsMm as Record<string, [number, number]>
      const spaces = check.expected.drawingSpaceMm as Record<string, [number, number]>
      for (const [size, [widthMm, heightMm]] of Object.entries(sizes)) {
        const frame = getFrame({ ...SHEET_FORMATS.A2, widthMm, heightMm })
        expect([frame.width, frame.height], size).toEqual(spaces[size])
        expect([frame.x, frame.y]).toEqual([input(check, 'leftMarginMm'), input(check, 'otherMarginsMm')])
      }
      for (const size of SHEET_SIZES) {
        expect([SHEET_FORMATS[size].widthMm, SHEET_FORMATS[size].heightMm]).toEqual(sizes[size])
      }
    },
  ],
  [
    // Lengths are recommended: a text of such a length stands in the block whole.
    /^doc-iso7200-fields/,
    (check) => {
      const lengths = check.expected.maxCharacters as Record<string, number>
      const fill = (field: string) => 'm'.repeat(lengths[field] ?? Number.NaN)
      const texts = {
        identity: {
          ownerName: 'Quillmoor Instruments',
          projectName: 'Skua',
          title: fill('title'),
          partNumber: fill('identification number'),
          revisionLabel: fill('revision index'),
          issuedOn: '2027-03-01',
          status: 'released',
          createdBy: fill('creator'),
          reviewedBy: [],
          loosenedBy: [],
          revisions: [],
          approvedBy: [fill('approval person')],
        },
        unitsNote: 'mm',
        hasPlan: true,
        sheetNumber: 1,
        sheetCount: 2,
      }
      const drawn = drawTitleBlock(SHEET_FORMATS.A4, texts, PRINT_PALETTE).flatMap(listTexts)
      const labels: Record<string, string> = {
        'legal owner': 'Legal owner',
        'identification number': 'Part number',
        'date of issue': 'Date of issue',
        'segment or sheet number': 'Sheet',
        title: 'Title',
        'approval person': 'Approved by',
        creator: 'Creator',
        'document type': 'Document type',
      }
      for (const field of check.inputs.mandatory as string[]) {
        expect(drawn, field).toContain(labels[field])
      }
      for (const field of ['title', 'identification number', 'creator', 'approval person']) {
        expect(drawn.join(''), field).toContain(fill(field))
      }
      expect(texts.identity.issuedOn).toHaveLength(lengths['date of issue'] ?? 0)
      expect(drawn).toContain(texts.identity.issuedOn)
    },
  ],
])

test('ISO 7200:2004: the title block is 180 mm wide, so that it fits the frame of A4 (from memory)', () => {
  expect(TITLE_BLOCK_WIDTH_MM).toBe(180)
  expect(getFrame(SHEET_FORMATS.A4).width).toBe(TITLE_BLOCK_WIDTH_MM)
})
