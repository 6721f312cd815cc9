import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type DrawnSheet, drawSheets, FILE_UNITS, PRINT_PALETTE, SHEET_SIZES } from '@/lib/drawing'
import { makeAnyPart } from './any-part'
import { loadDesign } from './demo-design'
import { findOutside, findOverlaps, listTextBoxes } from './sheet-boxes'
import { type Box, boxOfMark, findOverprints, listMarks } from './sheet-marks'

const { design: whole, evaluation } = loadDesign('skua-rev-b.json')

/** Half of the thickest line, and of a symbol on an edge of the array. */
const LINE_MM = 0.6

const PICTURES = ['plan', 'array', 'folded']

const over = (one: Box, other: Box) =>
  Math.min(one.right, other.right) - Math.max(one.left, other.left) > 0.01 &&
  Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top) > 0.01

const boxOf = ({ x, y, width, height }: DrawnSheet['parts'][number]['rect']): Box => ({
  left: x,
  right: x + width,
  top: y,
  bottom: y + height,
})

/** The title block is the one frame of 180 mm that a sheet draws with paper beneath it. */
function findTitleBlock(sheet: DrawnSheet): Box {
  const found = sheet.nodes
    .flatMap(({ children }) => children)
    .flatMap((child) =>
      typeof child !== 'string' && child.tag === 'rect' && child.attributes.width === 180 ? [child] : [],
    )
  const [block] = found
  if (block === undefined) throw new Error('no title block')
  const [x, y, height] = [block.attributes.x, block.attributes.y, block.attributes.height].map(Number)
  return { left: x ?? 0, right: (x ?? 0) + 180, top: y ?? 0, bottom: (y ?? 0) + (height ?? 0) }
}

function describeFaults(sheet: DrawnSheet): string[] {
  const faults = [...findOutside(sheet).map((text) => `"${text}" leaves the frame`), ...findOverlaps(sheet)]
  const title = findTitleBlock(sheet)
  sheet.parts.forEach((part, index) => {
    const box = boxOf(part.rect)
    if (over(box, title)) faults.push(`"${part.title}" reaches the title block`)
    for (const other of sheet.parts.slice(index + 1)) {
      if (over(box, boxOf(other.rect))) faults.push(`"${part.title}" lies over "${other.title}"`)
    }
    for (const text of listTextBoxes(part)) {
      if (!reaches(text, box)) faults.push(`"${text.text}" leaves "${part.title}"`)
    }
    if (!PICTURES.includes(part.blockId)) return
    for (const mark of listMarks(part.nodes)) {
      const own = boxOfMark(mark)
      if (!reaches(own, box)) {
        const what = mark.kind === 'text' ? mark.box.text : mark.kind
        faults.push(
          `${what} at ${[own.left, own.top, own.right, own.bottom].map(Math.round)} leaves "${part.title}" ${[box.left, box.top, box.right, box.bottom].map(Math.round)}`,
        )
      }
    }
    if (part.blockId === 'plan') faults.push(...findOverprints(part.nodes))
  })
  return faults
}

/** The overall size stands in the view, and each name either in the view or in the sentence below it. */
function findUnsaid({ plan, bends, features }: typeof whole, sheets: readonly DrawnSheet[]): string[] {
  const texts = sheets
    .flatMap(({ parts }) => parts.filter(({ blockId }) => blockId === 'plan'))
    .flatMap(listTextBoxes)
    .map(({ text }) => text)
  const said = texts.join(' ')
  const [xs, ys] = [0, 1].map((key) => plan?.outline?.map(({ atMm }) => atMm[key] ?? 0) ?? [])
  const sizes = plan?.outline?.some(({ viaMm }) => viaMm !== null)
    ? []
    : [xs, ys].map((all = []) => String(Math.round((Math.max(...all) - Math.min(...all)) * 1e6) / 1e6))
  const names = [...bends.map((_, index) => `B${index + 1}`), ...features.holes.map((_, index) => `H${index + 1}`)]
  return [
    ...sizes.filter(
      (size) => !texts.some((text) => text === `(${size})` || text === size || text.startsWith(`${size} `)),
    ),
    ...(/ and \d+ more/.test(said) ? [] : names.filter((name) => !new RegExp(`\\b${name}\\b`).test(said))),
  ]
}

const reaches = (own: Box, whole: Box) =>
  own.left >= whole.left - LINE_MM &&
  own.right <= whole.right + LINE_MM &&
  own.top >= whole.top - LINE_MM &&
  own.bottom <= whole.bottom + LINE_MM

const draw = (design: typeof whole, size: (typeof SHEET_SIZES)[number] | null) =>
  drawSheets(design, evaluation, {
    identity: {
      ownerName: 'Quillmoor Instruments',
      projectName: 'Skua',
      title: design.name,
      partNumber: 'QI-2041',
      revisionLabel: 'B',
      issuedOn: null,
      status: 'early review',
      createdBy: 'Mara Tolland',
      reviewedBy: [],
      loosenedBy: [],
      revisions: [],
      approvedBy: [],
    },
    units: FILE_UNITS,
    palette: PRINT_PALETTE,
    size,
  })

describe('any part on its drawing sheets', () => {
  test('no text is cut, or printed over another or over a symbol; no line runs through a text or leaves its view', () => {
    fc.assert(
      fc.property(makeAnyPart(whole), fc.constantFrom(null, ...SHEET_SIZES), (design, size) => {
        const sheets = draw(design, size)
        expect(sheets.flatMap(describeFaults).slice(0, 6)).toEqual([])
        expect(findUnsaid(design, sheets)).toEqual([])
      }),
      { numRuns: 60, seed: 20_261_130 },
    )
  }, 240_000)

  test.each(['skua-rev-a.json', 'skua-rev-b.json', 'pipit-rev-a.json'])('nor with %s', (file) => {
    const { design } = loadDesign(file)
    for (const size of SHEET_SIZES) expect(draw(design, size).flatMap(describeFaults)).toEqual([])
  })
})
