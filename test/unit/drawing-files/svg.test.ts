import { describe, expect, it } from 'vitest'
import { type Drawing, drawSvg, readSvg } from '@/lib/drawing-files'

/** After SVG 2 (paths, basic shapes, coordinate systems), from memory; results by hand. */
const svg = (inside: string, root = 'width="100mm" viewBox="0 0 100 50"') =>
  new TextEncoder().encode(`<svg xmlns="http://www.w3.org/2000/svg" ${root}>${inside}</svg>`)

function draw(inside: string, root?: string): Drawing {
  const read = readSvg(svg(inside, root))
  if (!read.ok) throw new Error(read.reason)
  return drawSvg(read.file, read.file.mmPerUnit ?? 1, 0.001)
}

const ends = ({ strokes }: Drawing) =>
  strokes.map(({ pieces }) =>
    pieces.map(({ from, to }) => [...from, ...to].map((mm) => Math.round(mm * 1e6) / 1e6 + 0)),
  )
const path = (d: string) => ends(draw(`<path d="${d}"/>`))

describe('an SVG', () => {
  it('is read with y turned up, commands absolute and relative, and pairs after a move as lines', () => {
    expect(path('M1 2 3 4h2v-1z')).toEqual([
      [
        [1, -2, 3, -4],
        [3, -4, 5, -4],
        [5, -4, 5, -3],
        [5, -3, 1, -2],
      ],
    ])
    expect(path('m1,2l1 0m5 5l1 0')).toEqual([[[1, -2, 2, -2]], [[7, -7, 8, -7]]])
  })

  it('keeps arcs of circles, with flags that stand close together', () => {
    const drawing = draw('<path d="M0 0a5 5 0 0110 0"/>')
    expect(ends(drawing)).toEqual([[[0, 0, 10, 0]]])
    expect(drawing.strokes[0]?.pieces[0]?.via?.map((mm) => Math.round(mm))).toEqual([5, 5])
    // Radii that do not reach grow.
    expect(path('M0 0A1 1 0 0 1 10 0')).toEqual([[[0, 0, 10, 0]]])
  })

  it('fits curves within the tolerance: a cubic that is nearly a quarter circle stays one (0.5523, well known)', () => {
    const drawing = draw('<path d="M10 0C10 5.5228 5.5228 10 0 10"/>')
    for (const { from, to } of drawing.strokes[0]?.pieces ?? []) {
      expect(Math.hypot(...from)).toBeCloseTo(10, 2)
      expect(Math.hypot(...to)).toBeCloseTo(10, 2)
    }
    expect(ends(draw('<path d="M0 0Q5 5 10 0T20 0"/>'))[0]?.at(-1)?.slice(2)).toEqual([20, 0])
  })

  it('takes basic shapes, groups as layers, transforms and units', () => {
    expect(
      ends(draw('<g id="OUT" transform="translate(1 2) scale(2)"><rect x="1" width="3" height="2"/></g>')),
    ).toEqual([
      [
        [3, -2, 9, -2],
        [9, -2, 9, -6],
        [9, -6, 3, -6],
        [3, -6, 3, -2],
      ],
    ])
    expect(draw('<g id="OUT"><g><circle cx="5" cy="5" r="2"/></g></g>').layers).toEqual([
      { name: 'OUT', strokes: 1, isHidden: false },
    ])
    expect(draw('<circle cx="5" cy="5" r="2"/>').strokes[0]?.circle).toEqual({ middle: [5, -5], radius: 2 })
    expect(ends(draw('<line x2="72"/>', 'width="1in" viewBox="0 0 72 72"'))).toEqual([[[0, 0, 25.4, 0]]])
    const unsaid = readSvg(svg('<line x2="1"/>', 'width="100"'))
    expect(unsaid.ok && unsaid.file.mmPerUnit).toBe(null)
  })

  it('leaves out what is hidden or defined for later, and says what it passes over', () => {
    const drawing = draw(
      '<defs><path d="M0 0h1"/></defs><g display="none"><path d="M0 0h2"/></g><text>a</text><path d="M0 0h3"/><path d="M0 0 L x"/><path d="1 2"/>',
    )
    expect(drawing.strokes).toHaveLength(1)
    expect(drawing.issues.map(({ message }) => message)).toEqual([
      '1 × text: not drawn in a plan, passed over',
      'shape 2, a path, "L" is not followed by the numbers that it needs, at "x": left out',
      'shape 3, a path, has "1 2" without a command: left out',
    ])
  })

  it('asks for the unit where its sides contradict each other, and leaves out what has a scale of its own', () => {
    const size = (root: string) => {
      const read = readSvg(svg('<line x2="1"/>', root))
      return read.ok ? read.file.mmPerUnit : null
    }
    expect(size('width="100mm" height="50mm" viewBox="0 0 100 50"')).toBe(1)
    expect(size('width="100mm" height="90mm" viewBox="0 0 100 50"')).toBe(null)
    const drawing = draw(
      '<svg viewBox="0 0 1 1"><path d="M0 0h1"/></svg><path style="display:none" d="M0 0h2"/><path d="M0 0h3"/>',
    )
    expect(ends(drawing)).toEqual([[[0, 0, 3, 0]]])
    expect(drawing.issues[0]?.message).toContain('within the svg')
  })

  it('is refused where it is none, with the reason', () => {
    const reason = (text: string) => {
      const read = readSvg(new TextEncoder().encode(text))
      return read.ok ? 'read' : read.reason
    }
    expect(reason('hello')).toContain('no svg element')
    expect(reason('<svg><path d="M0 0h1"/>')).toContain('not well-formed')
    expect(reason('<!DOCTYPE svg [<!ENTITY a "b">]><svg><path d="M0 0h1"/></svg>')).toContain('entities')
    expect(reason('<svg/>')).toContain('draws nothing')
  })
})
