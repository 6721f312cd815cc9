import { describe, expect, it } from 'vitest'
import { drawPaperModel, PRINT_PALETTE } from '@/lib/drawing'
import { evaluate } from '@/lib/engine'
import { writeDrawingPdf } from '@/lib/package'
import { readDemoDesign, readDrawnDesign } from '../engine-assembly/demo-design-files'
import { findTextOverlaps } from './text-overlaps'

const POINTS_PER_MM = 72 / 25.4
const IDENTITY = { title: 'Paper model', subject: 'Skua', author: 'Quillmoor Instruments', at: '2026-11-29T00:00:00Z' }

type Matrix = readonly [number, number, number, number, number, number]
type Point = readonly [number, number]

/** `first` is applied first, as in a PDF's `cm` (ISO 32000-1, 8.3.4, from memory). */
const times = (first: Matrix, then: Matrix): Matrix => [
  first[0] * then[0] + first[1] * then[2],
  first[0] * then[1] + first[1] * then[3],
  first[2] * then[0] + first[3] * then[2],
  first[2] * then[1] + first[3] * then[3],
  first[4] * then[0] + first[5] * then[2] + then[4],
  first[4] * then[1] + first[5] * then[3] + then[5],
]

/** Straight lines of each page of a PDF, in mm on the paper: its path operators read under the matrices that hold for them. Pages are not compressed. */
function readLines(bytes: Uint8Array): { from: Point; to: Point }[][] {
  const text = Buffer.from(bytes).toString('latin1')
  const pages: { from: Point; to: Point }[][] = []
  for (const found of text.matchAll(/(?<!end)stream\r?\n/g)) {
    const start = (found.index ?? 0) + found[0].length
    const end = text.indexOf('endstream', start)
    const content = text.slice(start, end)
    if (!/^[\x20-\x7e\s]*$/.test(content) || !/ cm\s/.test(content)) continue
    const lines: { from: Point; to: Point }[] = []
    let matrix: Matrix = [1, 0, 0, 1, 0, 0]
    const stack: Matrix[] = []
    let numbers: number[] = []
    let at: Point = [0, 0]
    const place = (x: number, y: number): Point => [
      (x * matrix[0] + y * matrix[2] + matrix[4]) / POINTS_PER_MM,
      (x * matrix[1] + y * matrix[3] + matrix[5]) / POINTS_PER_MM,
    ]
    for (const word of content.split(/\s+/)) {
      const number = Number(word)
      if (word !== '' && Number.isFinite(number)) {
        numbers.push(number)
        continue
      }
      const [a = 0, b = 0] = numbers
      if (word === 'q') stack.push(matrix)
      else if (word === 'Q') matrix = stack.pop() ?? matrix
      else if (word === 'cm') matrix = times(numbers as unknown as Matrix, matrix)
      else if (word === 'm') at = place(a, b)
      else if (word === 'l') {
        const to = place(a, b)
        lines.push({ from: at, to })
        at = to
      }
      numbers = []
    }
    pages.push(lines)
  }
  return pages
}

const design = readDrawnDesign('skua-rev-b')
const bandWidthsMm = new Map(evaluate(design).bends.map(({ bendId, developedLengthMm }) => [bendId, developedLengthMm]))
const draw = (name: typeof design, paper: 'a4' | 'letter') =>
  drawPaperModel(name, { paper, palette: PRINT_PALETTE, name: 'Skua, revision B', bandWidthsMm })
const lengthOf = ({ from, to }: { from: Point; to: Point }) => Math.hypot(to[0] - from[0], to[1] - from[1])

describe.each(['a4', 'letter'] as const)('a paper model on %s, read back from its PDF', (paper) => {
  it('has a line of 100 mm on each sheet, and the outline and the folds at their true size', async () => {
    const pictures = draw(design, paper)
    const pages = readLines(await writeDrawingPdf(pictures, IDENTITY))
    expect(pages).toHaveLength(pictures.length)
    for (const lines of pages) {
      expect(lines.filter((line) => Math.abs(lengthOf(line) - 100) < 0.01).length).toBeGreaterThan(0)
    }
    const all = pages.flat()
    const has = (mm: number) => all.some((line) => Math.abs(lengthOf(line) - mm) < 0.02)
    // Edge of the finger, end of the controller board, both axes.
    for (const mm of [14.5, 34, 18, 14]) expect(has(mm), String(mm)).toBe(true)
  })
})

describe('a paper model', () => {
  it('takes as few sheets as it needs, and each point of the outline lies on one of them', () => {
    expect(draw(design, 'a4')).toHaveLength(1)
    const wide = structuredClone(design)
    if (wide.plan?.outline == null) throw new Error('no outline')
    wide.plan.outline = [
      [0, 0],
      [450, 0],
      [450, 300],
      [0, 300],
    ].map(([x = 0, y = 0]) => ({ atMm: [x, y], viaMm: null }))
    const pictures = draw(wide, 'a4')
    // By hand: 460 by 310 mm; a window of 190 by 245 mm upright goes on by 180 and 235 mm: 3 by 2. Across, 277 by 158 mm: 2 by 3.
    expect(pictures).toHaveLength(6)
    for (const picture of pictures) expect(findTextOverlaps(picture)).toEqual([])
  })

  it('has dash-dotted folds where the inside face is the bottom one, dashed ones where it is the top', () => {
    const other = structuredClone(design)
    for (const bend of other.bends) bend.insideFace = 'top'
    const dashes = (of: typeof design) => JSON.stringify(draw(of, 'a4')[0]?.nodes).match(/"stroke-dasharray":"[^"]+"/g)
    const count = (of: typeof design, pattern: string) =>
      dashes(of)?.filter((found) => found.includes(`"${pattern}"`)).length ?? 0
    // One more of each stands in the legend.
    expect([count(design, '6 1.2 0.8 1.2'), count(design, '2.4 1.4')]).toEqual([3, 1])
    expect([count(other, '6 1.2 0.8 1.2'), count(other, '2.4 1.4')]).toEqual([1, 3])
  })

  it('is nothing where nothing is drawn', () => {
    expect(draw(readDemoDesign('skua-rev-b'), 'a4')).toEqual([])
  })
})
