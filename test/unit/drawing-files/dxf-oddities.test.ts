import { describe, expect, it } from 'vitest'
import { type Drawing, drawDxf, readDxf } from '@/lib/drawing-files'
import { bytes, dxf, type Groups, line, MM, text } from './dxf-text'

/**
 * What real files hold. Group codes after the published DXF reference (LWPOLYLINE, POLYLINE, header variables and the object coordinate system
 * were read; the others are from memory). The list of oddities is common practice, no published source.
 */
function draw(file: string | Uint8Array, mmPerUnit = 1, toleranceMm = 0.001): Drawing {
  const read = readDxf(typeof file === 'string' ? bytes(file) : file)
  if (!read.ok) throw new Error(read.reason)
  return drawDxf(read.file, mmPerUnit, toleranceMm)
}

const entities = (groups: Groups) => draw(dxf({ entities: groups }))
const messages = ({ issues }: Drawing) => issues.map(({ line: at, message }) => `${at}: ${message}`)
const ends = ({ strokes }: Drawing) =>
  strokes.flatMap(({ pieces }) =>
    pieces.map(({ from, to }) => [...from, ...to].map((mm) => Math.round(mm * 1e6) / 1e6)),
  )
const vias = ({ strokes }: Drawing) =>
  strokes.flatMap(({ pieces }) => pieces.map(({ via }) => via?.map((mm) => Math.round(mm * 1e6) / 1e6 + 0) ?? null))

describe('a DXF that is none', () => {
  const reason = (file: Uint8Array | string) => {
    const read = readDxf(typeof file === 'string' ? bytes(file) : file)
    return read.ok ? 'read' : read.reason
  }
  it('is refused with its reason', () => {
    expect(reason('')).toBe('the file is empty')
    expect(reason('hello\nworld\n')).toContain('not a DXF file')
    expect(reason('AutoCAD Binary DXF\r\n\u001a\u0000')).toContain('binary DXF')
    expect(reason('AC1032\u0000\u0000')).toContain('DWG')
    expect(reason(new Uint8Array([1, 0, 2, 0]))).toContain('not text')
    expect(reason(dxf({ entities: [] }))).toContain('draws nothing')
    expect(reason(new Uint8Array(17 * 1024 * 1024))).toContain('at most')
  })
})

describe('a DXF with oddities', () => {
  it('may have lines before the header, comments, CRLF, no end mark and blanks round codes', () => {
    const file = `made by hand\nfor a test\n999\nnote\n${text([[0, 'SECTION'], [2, 'ENTITIES'], ...line(0, 0, 5, 0)])}`
    const drawing = draw(file.replaceAll('\n', '\r\n').replaceAll('\r\n10\r\n', '\r\n 10 \r\n'))
    expect(ends(drawing)).toEqual([[0, 0, 5, 0]])
    expect(messages(drawing).join()).toMatch(/2 lines stand before.*no end mark/)
  })

  it('ends where it says so, whatever follows', () => {
    expect(messages(draw(`${dxf({ entities: line(0, 0, 1, 0) })}\u001ajunk\nmore\n`))).toEqual([])
  })

  it('keeps what is right beside what is wrong, with the line', () => {
    const drawing = entities([
      ...line(0, 0, 1, 0),
      [0, 'LINE'],
      [8, 'A'],
      [10, 'abc'],
      [20, 0],
      [11, 1],
      [21, 1],
      ...line(2, 0, 3, 0),
    ])
    expect(ends(drawing)).toEqual([
      [0, 0, 1, 0],
      [2, 0, 3, 0],
    ])
    expect(messages(drawing)).toEqual(['45: LINE group 10 in line 50, "abc", is not a number: left out'])
  })

  it('gets into step again after a stray line', () => {
    const drawing = draw(
      dxf({ entities: [...line(0, 0, 1, 0), ...line(1, 0, 2, 0)] }).replace('LINE\n8\nA\n', 'LINE\nstray text\n8\nA\n'),
    )
    expect(ends(drawing)).toHaveLength(2)
    expect(messages(drawing)[0]).toContain('stands where a group code should')
  })

  it('says what it passes over, once for each kind', () => {
    const drawing = entities([[0, 'TEXT'], [8, 'A'], [1, 'x'], [0, 'TEXT'], [8, 'A'], [1, 'y'], ...line(0, 0, 1, 0)])
    expect(messages(drawing)).toEqual(['33: 2 × TEXT: not drawn in a plan, passed over'])
  })

  it('leaves out other layouts and what is invisible, and marks layers that are off or frozen', () => {
    const drawing = draw(
      dxf({
        layers: [
          [0, 'LAYER'],
          [2, 'OFF'],
          [70, 0],
          [62, -3],
          [0, 'LAYER'],
          [2, 'FROZEN'],
          [70, 1],
          [62, 3],
          [0, 'LAYER'],
          [2, 'ON'],
          [70, 0],
          [62, 3],
        ],
        entities: [
          ...line(0, 0, 1, 0, 'OFF'),
          ...line(0, 0, 2, 0, 'FROZEN'),
          ...line(0, 0, 3, 0, 'ON'),
          ...line(0, 0, 4, 0, 'ON'),
          [67, 1],
          ...line(0, 0, 5, 0, 'ON'),
          [60, 1],
        ],
      }),
    )
    expect(drawing.layers).toEqual([
      { name: 'OFF', strokes: 1, isHidden: true },
      { name: 'FROZEN', strokes: 1, isHidden: true },
      { name: 'ON', strokes: 1, isHidden: false },
    ])
    expect(messages(drawing).join()).toMatch(/other layout.*invisible/)
  })

  it('reads names outside of ASCII: by number, in UTF-8 and in the code page of Western Europe', () => {
    const named = (name: string) => dxf({ entities: line(0, 0, 1, 0, name) })
    expect(draw(named('Kontur-\\U+00E4')).layers[0]?.name).toBe('Kontur-ä')
    expect(draw(named('Kontur-ä')).layers[0]?.name).toBe('Kontur-ä')
    const latin = Uint8Array.from([...named('Kontur-ä')].map((letter) => letter.charCodeAt(0)))
    expect(draw(latin).layers[0]?.name).toBe('Kontur-ä')
  })
})

describe('units', () => {
  const stated = (header: Groups) => {
    const read = readDxf(bytes(dxf({ header, entities: line(0, 0, 1, 0) })))
    return read.ok ? [read.file.stated.unit?.key ?? null, read.file.stated.says] : []
  }
  it('are taken where the file says them, and asked for where it does not', () => {
    expect(stated(MM)[0]).toBe('mm')
    expect(
      stated([
        [9, '$INSUNITS'],
        [70, 9],
      ])[0],
    ).toBe('mil')
    expect(
      stated([
        [9, '$INSUNITS'],
        [70, 13],
      ])[0],
    ).toBe('um')
    expect(stated([])).toEqual([null, 'The file does not say its unit ($INSUNITS is missing).'])
    expect(
      stated([
        [9, '$INSUNITS'],
        [70, 0],
      ])[0],
    ).toBe(null)
    expect(
      stated([
        [9, '$INSUNITS'],
        [70, 19],
      ])[0],
    ).toBe(null)
  })
  it('are asked for where the file contradicts itself', () => {
    expect(stated([...MM, [9, '$MEASUREMENT'], [70, 0]])[1]).toContain('contradicts itself')
    expect(
      stated([
        [9, '$INSUNITS'],
        [70, 1],
        [9, '$MEASUREMENT'],
        [70, 1],
      ])[0],
    ).toBe(null)
    expect(
      stated([
        [9, '$INSUNITS'],
        [70, 1],
        [9, '$MEASUREMENT'],
        [70, 0],
      ])[0],
    ).toBe('in')
  })
  it('scale the drawing', () => {
    expect(ends(draw(dxf({ entities: line(0, 0, 1, 0.5) }), 25.4))).toEqual([[0, 0, 25.4, 12.7]])
  })
})

describe('curves of a DXF', () => {
  it('arcs run counter-clockwise from start to end, also past 0', () => {
    const arc = (start: number, end: number): Groups => [
      [0, 'ARC'],
      [8, 'A'],
      [10, 0],
      [20, 0],
      [40, 2],
      [50, start],
      [51, end],
    ]
    expect(ends(entities(arc(0, 90)))).toEqual([[2, 0, 0, 2]])
    expect(vias(entities(arc(315, 45)))).toEqual([[2, 0]])
    // 270 degrees: two arcs, since none is more than a half circle.
    expect(ends(entities(arc(0, 270))).length).toBe(2)
  })

  it('a normal that points down mirrors x, wherever it stands among the groups', () => {
    const before: Groups = [
      [0, 'ARC'],
      [8, 'A'],
      [210, 0],
      [220, 0],
      [230, -1],
      [10, 1],
      [20, 0],
      [40, 1],
      [50, 0],
      [51, 90],
    ]
    const after: Groups = [
      [0, 'ARC'],
      [8, 'A'],
      [10, 1],
      [20, 0],
      [40, 1],
      [50, 0],
      [51, 90],
      [210, 0],
      [220, 0],
      [230, -1],
    ]
    for (const groups of [before, after]) expect(ends(entities(groups))).toEqual([[-2, 0, -1, 1]])
    // Lines are in the drawing's own coordinates whatever their normal.
    expect(ends(entities([...line(1, 2, 3, 4), [230, -1]]))).toEqual([[1, 2, 3, 4]])
    expect(messages(entities([...before.slice(0, 2), [210, 1], [220, 0], [230, 0], ...before.slice(5)]))[0]).toContain(
      'tilted',
    )
  })

  it('a bulge belongs to the way that starts there, turns left where positive, and closes too', () => {
    const drawing = entities([
      [0, 'LWPOLYLINE'],
      [8, 'A'],
      [90, 2],
      [70, 1],
      [10, 0],
      [20, 0],
      [42, 1],
      [10, 4],
      [20, 0],
      [42, 1],
    ])
    expect(ends(drawing)).toEqual([
      [0, 0, 4, 0],
      [4, 0, 0, 0],
    ])
    expect(vias(drawing)).toEqual([
      [2, -2],
      [2, 2],
    ])
  })

  it('a bulge past a half circle becomes two arcs', () => {
    const drawing = entities([
      [0, 'LWPOLYLINE'],
      [8, 'A'],
      [70, 0],
      [10, 0],
      [20, 0],
      [42, 2],
      [10, 1],
      [20, 0],
    ])
    expect(drawing.strokes[0]?.pieces).toHaveLength(2)
  })

  it('old polylines: vertices follow, frames of splines are no part of the curve, meshes are left out', () => {
    const vertex = (x: number, y: number, flags = 0): Groups => [
      [0, 'VERTEX'],
      [8, 'A'],
      [10, x],
      [20, y],
      [70, flags],
    ]
    const drawing = entities([
      [0, 'POLYLINE'],
      [8, 'A'],
      [66, 1],
      [70, 5],
      ...vertex(0, 0),
      ...vertex(9, 9, 16),
      ...vertex(1, 0, 8),
      ...vertex(1, 1),
      [0, 'SEQEND'],
      ...line(5, 5, 6, 6),
      [0, 'POLYLINE'],
      [8, 'A'],
      [70, 16],
      ...vertex(0, 0),
      [0, 'SEQEND'],
    ])
    expect(ends(drawing)).toEqual([
      [0, 0, 1, 0],
      [1, 0, 1, 1],
      [1, 1, 0, 0],
      [5, 5, 6, 6],
    ])
    expect(messages(drawing).join()).toContain('mesh')
  })

  it('ellipses come within the tolerance, by parameter and not by angle', () => {
    const drawing = entities([
      [0, 'ELLIPSE'],
      [8, 'A'],
      [10, 0],
      [20, 0],
      [11, 10],
      [21, 0],
      [40, 0.5],
      [41, 0],
      [42, Math.PI / 2],
    ])
    const [first] = drawing.strokes[0]?.pieces ?? []
    const last = drawing.strokes[0]?.pieces.at(-1)
    expect(first?.from).toEqual([10, 0])
    expect(last?.to.map((mm) => Math.round(mm * 1e9) / 1e9)).toEqual([0, 5])
    expect(worstOff(drawing, ([x, y]) => Math.abs(Math.hypot(x / 10, y / 5) - 1) * 5)).toBeLessThan(0.001)
    // A ratio of 1 is a circle, exactly.
    const round = entities([
      [0, 'ELLIPSE'],
      [8, 'A'],
      [10, 0],
      [20, 0],
      [11, 3],
      [21, 0],
      [40, 1],
      [41, 0],
      [42, 2 * Math.PI],
    ])
    expect(round.strokes[0]?.circle).toEqual({ middle: [0, 0], radius: 3 })
  })

  it('a rational spline of a quarter circle is that circle (Piegl and Tiller, weights 1, √½, 1; from memory)', () => {
    const quarter: Groups = [
      [0, 'SPLINE'],
      [8, 'A'],
      [70, 4],
      [71, 2],
      ...[0, 0, 0, 1, 1, 1].map((knot) => [40, knot] as const),
      ...[1, Math.SQRT1_2, 1].map((weight) => [41, weight] as const),
      [10, 5],
      [20, 0],
      [10, 5],
      [20, 5],
      [10, 0],
      [20, 5],
    ]
    const drawing = entities(quarter)
    expect(drawing.strokes[0]?.pieces).toHaveLength(1)
    expect(worstOff(drawing, ([x, y]) => Math.abs(Math.hypot(x, y) - 5))).toBeLessThan(1e-9)
    expect(messages(entities(quarter.filter(([code]) => code !== 41 || false).concat([[41, -1]])))[0]).toContain(
      'weights',
    )
  })

  it('splines that say too little are left out with the reason', () => {
    const spline = (...groups: Groups): string =>
      messages(entities([[0, 'SPLINE'], [8, 'A'], [71, 3], ...groups]))[0] ?? ''
    expect(spline([11, 0], [21, 0], [11, 1], [21, 1])).toContain('fit points alone')
    expect(spline([40, 0], [40, 1], [10, 0], [20, 0], [10, 1], [20, 1])).toContain('does not go with')
    expect(spline()).toContain('without control points')
  })

  it('unclamped knots draw the inner stretch alone', () => {
    // Uniform quadratic B-spline: it starts and ends in the middles of the outer legs (closed form).
    const drawing = entities([
      [0, 'SPLINE'],
      [8, 'A'],
      [71, 2],
      ...[0, 1, 2, 3, 4, 5].map((knot) => [40, knot] as const),
      [10, 0],
      [20, 0],
      [10, 4],
      [20, 0],
      [10, 4],
      [20, 4],
    ])
    const pieces = drawing.strokes[0]?.pieces ?? []
    expect(pieces[0]?.from).toEqual([2, 0])
    expect(pieces.at(-1)?.to).toEqual([4, 2])
  })
})

function worstOff({ strokes }: Drawing, off: (point: readonly [number, number]) => number): number {
  let worst = 0
  for (const { pieces } of strokes) {
    for (const { from, via, to } of pieces) {
      if (via === null) throw new Error('a straight piece')
      const [[cx, cy], radius] = through(from, via, to)
      const angle = ([x, y]: readonly [number, number]) => Math.atan2(y - cy, x - cx)
      const [start, middle, end] = [angle(from), angle(via), angle(to)]
      const turn = (a: number, b: number) => Math.atan2(Math.sin(b - a), Math.cos(b - a))
      const sweep = turn(start, middle) + turn(middle, end)
      for (let at = 0; at <= 50; at += 1) {
        const rad = start + (sweep * at) / 50
        worst = Math.max(worst, off([cx + radius * Math.cos(rad), cy + radius * Math.sin(rad)]))
      }
    }
  }
  return worst
}

function through(a: readonly [number, number], b: readonly [number, number], c: readonly [number, number]) {
  const [bx, by, cx, cy] = [b[0] - a[0], b[1] - a[1], c[0] - a[0], c[1] - a[1]]
  const cross = 2 * (bx * cy - by * cx)
  const [ux, uy] = [
    (cy * (bx * bx + by * by) - by * (cx * cx + cy * cy)) / cross,
    (bx * (cx * cx + cy * cy) - cx * (bx * bx + by * by)) / cross,
  ]
  return [[a[0] + ux, a[1] + uy] as const, Math.hypot(ux, uy)] as const
}

describe('blocks', () => {
  const block = (name: string, content: Groups, base: readonly [number, number] = [0, 0]): Groups => [
    [0, 'BLOCK'],
    [8, '0'],
    [2, name],
    [10, base[0]],
    [20, base[1]],
    ...content,
    [0, 'ENDBLK'],
  ]
  const insert = (name: string, ...groups: Groups): Groups => [
    [0, 'INSERT'],
    [8, 'PLACED'],
    [2, name],
    [10, 10],
    [20, 0],
    ...groups,
  ]

  it('are placed by base point, scale, turn and shift, in this order; layer 0 takes the layer of the insert', () => {
    const drawing = draw(
      dxf({ blocks: block('B', line(1, 1, 3, 1, '0'), [1, 1]), entities: insert('b', [41, 2], [42, 2], [50, 90]) }),
    )
    expect(ends(drawing)).toEqual([[10, 0, 10, 4]])
    expect(drawing.layers[0]?.name).toBe('PLACED')
  })

  it('mirrored ones turn arcs over, unequal scales make ellipses of circles', () => {
    const arc: Groups = [
      [0, 'ARC'],
      [8, 'A'],
      [10, 0],
      [20, 0],
      [40, 1],
      [50, 0],
      [51, 90],
    ]
    const mirrored = draw(dxf({ blocks: block('B', arc), entities: insert('B', [41, -1]) }))
    expect(ends(mirrored)).toEqual([[9, 0, 10, 1]])
    const circle: Groups = [
      [0, 'CIRCLE'],
      [8, 'A'],
      [10, 0],
      [20, 0],
      [40, 1],
    ]
    const stretched = draw(dxf({ blocks: block('B', circle), entities: insert('B', [41, 3]) }))
    expect(stretched.strokes[0]?.circle).toBe(null)
    expect(worstOff(stretched, ([x, y]) => Math.abs(Math.hypot((x - 10) / 3, y) - 1))).toBeLessThan(0.001)
  })

  it('nest, repeat in rows and columns, and stop where they hold themselves', () => {
    const inner = block('IN', line(0, 0, 1, 0))
    const outer = block('OUT', [
      [0, 'INSERT'],
      [8, '0'],
      [2, 'IN'],
      [10, 5],
      [20, 0],
      [70, 2],
      [71, 2],
      [44, 10],
      [45, 20],
    ])
    expect(ends(draw(dxf({ blocks: [...inner, ...outer], entities: insert('OUT') })))).toEqual([
      [15, 0, 16, 0],
      [25, 0, 26, 0],
      [15, 20, 16, 20],
      [25, 20, 26, 20],
    ])
    const looped = block('LOOP', [...line(0, 0, 1, 0), [0, 'INSERT'], [8, '0'], [2, 'LOOP'], [10, 0], [20, 0]])
    const drawing = draw(dxf({ blocks: looped, entities: insert('LOOP') }))
    expect(ends(drawing)).toHaveLength(1)
    expect(messages(drawing).join()).toContain('within itself')
  })

  it('that are missing, unnamed or repeated beyond measure are told', () => {
    const drawing = draw(
      dxf({
        blocks: block('B', line(0, 0, 1, 0)),
        entities: [
          ...insert('GONE'),
          [0, 'INSERT'],
          [8, 'A'],
          [10, 0],
          [20, 0],
          ...insert('B', [70, 30000], [71, 30000]),
        ],
      }),
    )
    expect(messages(drawing).map((message) => message.replace(/^\d+: /, ''))).toEqual([
      'INSERT names block "GONE", which is not in the file: left out',
      'INSERT names no block: left out',
      'INSERT repeats its block 30000 by 30000 times; at most 10000 in all are drawn: left out',
    ])
  })

  it('a thousand within a thousand is given up, not waited for', () => {
    const level = (at: number): Groups =>
      block(`B${at}`, [
        [0, 'INSERT'],
        [8, '0'],
        [2, `B${at + 1}`],
        [10, 0],
        [20, 0],
        [70, 100],
        [71, 100],
      ])
    const blocks = [...[0, 1, 2, 3].flatMap(level), ...block('B4', line(0, 0, 1, 0))]
    const drawing = draw(dxf({ blocks, entities: insert('B0') }))
    expect(messages(drawing).join()).toMatch(/too much|more than/)
  })
})
