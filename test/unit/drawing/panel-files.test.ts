import { expect, it } from 'vitest'
import { type LaidPanel, writePanelCsv, writePanelDxf, writePanelSvg } from '@/lib/drawing'
import { drawDxf, drawSvg, readDxf, readSvg } from '@/lib/drawing-files'
import { nestPart, type PanelFormat } from '@/lib/fabrication'
import { getAreaUm2 } from '@/lib/geometry'
import { findNestingFaults } from '../fabrication/panel/independent-check'
import { U_SHAPE } from '../fabrication/panel/shapes'

const FORMAT: PanelFormat = {
  id: 'production',
  name: '12 x 18 in',
  widthMm: 304.8,
  heightMm: 457.2,
  marginLeftMm: 10,
  marginRightMm: 20,
  marginTopMm: 5,
  marginBottomMm: 15,
  spacingMm: 2,
  allowedRotationsDeg: [0, 90, 180, 270],
  foilRollingDirection: null,
  note: '',
}
const EXTRA = { extraMarginMm: 3, extraSpacingMm: 1 }

const SINGLE: LaidPanel = {
  part: { outline: U_SHAPE },
  nesting: nestPart({ outline: U_SHAPE, rollingDirection: null }, FORMAT, EXTRA),
  format: FORMAT,
  extraMarginMm: EXTRA.extraMarginMm,
}

const ARRAY_PART = {
  outline: [
    [0, 0],
    [200_000, 0],
    [200_000, 70_000],
    [0, 70_000],
  ] as [number, number][],
  array: {
    part: U_SHAPE,
    parts: [5000, 105_000].map((dx) => U_SHAPE.map(([x, y]): [number, number] => [x + dx, y + 5000])),
  },
}
const ARRAYS: LaidPanel = {
  part: ARRAY_PART,
  nesting: nestPart({ ...ARRAY_PART, rollingDirection: null }, FORMAT, EXTRA),
  format: FORMAT,
  extraMarginMm: EXTRA.extraMarginMm,
}

type Ways = readonly { readonly layer: string; readonly corners: readonly (readonly [number, number])[] }[]

/** What a reader of the file sees, in whole micrometres. */
function readBack(drawing: ReturnType<typeof drawDxf>): Ways {
  expect(drawing.issues).toEqual([])
  return drawing.strokes.map(({ layer, pieces }) => ({
    layer,
    corners: pieces.map(({ from: [x, y] }): [number, number] => [Math.round(x * 1000), Math.round(y * 1000)]),
  }))
}

function dxfOf(panel: LaidPanel): Ways {
  const read = readDxf(new TextEncoder().encode(writePanelDxf(panel)))
  if (!read.ok) throw new Error(read.reason)
  expect(read.file.issues).toEqual([])
  return readBack(drawDxf(read.file, 1, 0.001))
}

const ofLayer = (ways: Ways, name: string) => ways.filter(({ layer }) => layer === name).map(({ corners }) => corners)
const boundsOf = (corners: Ways[number]['corners']) => [
  Math.min(...corners.map(([x]) => x)),
  Math.min(...corners.map(([, y]) => y)),
  Math.max(...corners.map(([x]) => x)),
  Math.max(...corners.map(([, y]) => y)),
]
const csvOf = (panel: LaidPanel) =>
  writePanelCsv(panel)
    .trim()
    .split('\r\n')
    .slice(1)
    .map((line) => line.split(',').map(Number))

it('a DXF holds the panel, what is usable of it, and every part whole and in its place', () => {
  const ways = dxfOf(SINGLE)
  expect(ofLayer(ways, 'PANEL').map(boundsOf)).toEqual([[0, 0, 304_800, 457_200]])
  expect(ofLayer(ways, 'USABLE').map(boundsOf)).toEqual([[13_000, 18_000, 281_800, 449_200]])
  const parts = ofLayer(ways, 'PART')
  expect(parts).toHaveLength(SINGLE.nesting.placements.length)
  expect(parts.length).toBeGreaterThan(4)
  for (const part of parts) expect(getAreaUm2(part)).toBe(getAreaUm2(U_SHAPE))
  // The check knows nothing of files: it places the outline itself, and must find each part where the file has it.
  const panel = { left: 13_000, bottom: 18_000, right: 281_800, top: 449_200, spacingUm: 3000 }
  expect(findNestingFaults(U_SHAPE, SINGLE.nesting.placements, panel)).toEqual([])
  expect(parts.map(boundsOf).map(([x, y]) => [x, y])).toEqual(
    SINGLE.nesting.placements.map(({ xUm, yUm }) => [xUm, yUm]),
  )
})

it('an SVG at true size shows the same', () => {
  const text = writePanelSvg(SINGLE)
  expect(text).toContain('width="304.8mm" height="457.2mm" viewBox="0 0 304.8 457.2"')
  const read = readSvg(new TextEncoder().encode(text))
  if (!read.ok) throw new Error(read.reason)
  expect(read.file.mmPerUnit).toBeCloseTo(1, 9)
  const all = readBack(drawSvg(read.file, 1, 0.001)).map(({ corners }) => boundsOf(corners))
  // A reader turns y up; it may count it from any line, so heights are told from the panel.
  const low = Math.min(...all.map((bounds) => bounds[1] ?? 0))
  const seen = all.map(([x = 0, y = 0, right = 0, top = 0]) => [x, y - low, right, top - low].join(' '))
  expect(seen.toSorted()).toEqual(
    dxfOf(SINGLE)
      .map(({ corners }) => boundsOf(corners).join(' '))
      .toSorted(),
  )
})

it('a CSV gives each part’s corner, size and turn', () => {
  const rows = csvOf(SINGLE)
  expect(rows).toHaveLength(SINGLE.nesting.placements.length)
  const bounds = ofLayer(dxfOf(SINGLE), 'PART').map(boundsOf)
  rows.forEach(([piece, part, x = 0, y = 0, width = 0, height = 0, turn], at) => {
    expect([piece, part, turn]).toEqual([at + 1, 1, SINGLE.nesting.placements[at]?.rotationDeg])
    expect([x, y, x + width, y + height].map((mm) => Math.round(mm * 1000))).toEqual(bounds[at])
  })
})

it('arrays are written as frames with their parts', () => {
  const pieces = ARRAYS.nesting.placements.length
  expect(pieces).toBeGreaterThan(1)
  const ways = dxfOf(ARRAYS)
  expect(ofLayer(ways, 'ARRAY')).toHaveLength(pieces)
  expect(ofLayer(ways, 'PART')).toHaveLength(2 * pieces)
  const rows = csvOf(ARRAYS)
  expect(rows.map(([piece, part]) => `${piece}.${part}`).slice(0, 4)).toEqual(['1.0', '1.1', '1.2', '2.0'])
  expect(rows).toHaveLength(3 * pieces)
})
