import DxfParser from 'dxf-parser'
import { describe, expect, it } from 'vitest'
import { drawDxf, drawSvg, readDxf, readSvg } from '@/lib/drawing-files'
import { checkPlan, EMPTY_PLAN, type Plan } from '@/lib/plan'
import { STARTING_SHAPES, startingShape } from '@/lib/plan/edit'
import { type ImportedPlan, planAsDxf, planAsSvg, planFromDrawing, suggestRoles } from '@/lib/plan/exchange'

const SIZES = { lengthMm: 60.123456, widthMm: 40, armMm: 12, cornerRadiusMm: 2.000001 }
const DIAMETERS = new Map([['via', 0.3]])

const furnished = (kind: (typeof STARTING_SHAPES)[number]): Plan => ({
  ...EMPTY_PLAN,
  ...startingShape(kind, SIZES),
  bendLines: [{ id: 'fold', bendId: 'fold', fromMm: [30, 0], toMm: [30, 12] }],
  dividingLines: [
    {
      id: 'edge',
      name: 'Edge',
      nodes: [
        { atMm: [20, 0], viaMm: [21.7, 5] },
        { atMm: [20, 12], viaMm: null },
      ],
    },
  ],
  stiffeners: [
    {
      id: 's',
      stiffenerId: 's',
      nodes: startingShape('strip', { lengthMm: 8, widthMm: 9, armMm: 1, cornerRadiusMm: 0 })?.outline ?? [],
    },
  ],
  holes: [
    { id: 'h', holeId: 'via', atMm: [1.5, 2], columns: 3, rows: 2, columnStepMm: [1.27, 0], rowStepMm: [0, 2.54] },
  ],
})

const bytes = (text: string) => new TextEncoder().encode(text)

function fromDxf(text: string, toOrigin = false): ImportedPlan {
  const read = readDxf(bytes(text))
  if (!read.ok) throw new Error(read.reason)
  expect(read.file.stated.unit?.key).toBe('mm')
  const drawing = drawDxf(read.file, 1, 0.001)
  const roles = new Map(
    suggestRoles(drawing).flatMap(({ layer, role }) => (role === null ? [] : [[layer, role] as const])),
  )
  return planFromDrawing(drawing, roles, { matchMm: 0.001, toOrigin })
}

const points = (nodes: readonly { readonly atMm: readonly number[] }[] | null) => nodes?.map(({ atMm }) => atMm)

describe('a plan as DXF', () => {
  it.each(STARTING_SHAPES)('comes back with every point where it was, %s', (kind) => {
    const plan = furnished(kind)
    const back = fromDxf(planAsDxf(plan, DIAMETERS))
    expect(back.issues).toEqual([])
    expect(points(back.outline)).toEqual(points(plan.outline))
    expect(back.cutOuts.map(points)).toEqual(plan.cutOuts.map(({ nodes }) => points(nodes)))
    expect(back.dividingLines.map(points)).toEqual(plan.dividingLines.map(({ nodes }) => points(nodes)))
    expect(back.bendLines).toEqual([[plan.bendLines[0]?.fromMm, plan.bendLines[0]?.toMm]])
    expect(back.stiffeners.map(points)).toEqual(plan.stiffeners.map(({ nodes }) => points(nodes)))
    expect(back.holes).toHaveLength(6)
    expect(back.holes.at(-1)).toEqual({ atMm: [4.04, 4.54], diameterMm: 0.3 })
    expect(checkPlan({ ...EMPTY_PLAN, outline: [...(back.outline ?? [])] })).toEqual([])
  })

  it('keeps the circles of arcs within 5 nm, the through-point moved to the middle', () => {
    const plan = furnished('strip')
    const via = fromDxf(planAsDxf(plan, DIAMETERS)).dividingLines[0]?.[0]?.viaMm ?? [0, 0]
    // Circle through (20, 0), (21.7, 5), (20, 12), by hand: its middle lies on y = 6, at x where both distances agree.
    const x = (21.7 ** 2 - 20 ** 2 + 1 - 36) / (2 * 1.7)
    const radius = Math.hypot(20 - x, 6)
    expect(via[1]).toBeCloseTo(6, 8)
    expect(Math.abs(Math.hypot(via[0] - x, via[1] - 6) - radius)).toBeLessThan(5e-6)
  })

  it('is read by another reader alike (dxf-parser): units, layers, closed polylines with bulges, circles', () => {
    const parsed = new DxfParser().parseSync(planAsDxf(furnished('L'), DIAMETERS))
    if (parsed === null) throw new Error('not read')
    expect(parsed.header.$INSUNITS).toBe(4)
    expect(parsed.header.$ACADVER).toBe('AC1015')
    expect(Object.keys(parsed.tables.layer.layers)).toEqual([
      '0',
      'OUTLINE',
      'DIVIDING_LINES',
      'BEND_LINES',
      'STIFFENERS',
      'HOLES',
    ])
    const [outline] = parsed.entities as unknown as {
      type: string
      layer: string
      shape: boolean
      vertices: { x: number; y: number; bulge?: number }[]
    }[]
    const plan = furnished('L')
    expect(outline?.layer).toBe('OUTLINE')
    expect(outline?.shape).toBe(true)
    expect(outline?.vertices.map(({ x, y }) => [x, y])).toEqual(points(plan.outline))
    // A quarter circle to the right: the tangent of 22.5°.
    const bulges = outline?.vertices.flatMap(({ bulge }) => (bulge ? [bulge] : [])) ?? []
    expect(bulges).toHaveLength(1)
    expect(bulges[0]).toBeCloseTo(-Math.tan(Math.PI / 8), 6)
    expect(parsed.entities.filter(({ type }) => type === 'CIRCLE')).toHaveLength(6)
  })

  it('names every handle once, and none above the seed', () => {
    const text = planAsDxf(furnished('ring'), DIAMETERS).split('\r\n')
    const handles: number[] = []
    let seed = 0
    for (let at = 0; at + 1 < text.length; at += 2) {
      if (text[at]?.trim() !== '5') continue
      const value = Number.parseInt(text[at + 1] ?? '', 16)
      if (text[at - 1] === '$HANDSEED') seed = value
      else handles.push(value)
    }
    expect(new Set(handles).size).toBe(handles.length)
    expect(Math.max(...handles)).toBeLessThan(seed)
  })
})

describe('a plan as SVG', () => {
  it.each(STARTING_SHAPES)('comes back with every point where it was, %s', (kind) => {
    const plan = furnished(kind)
    const read = readSvg(bytes(planAsSvg(plan, DIAMETERS)))
    if (!read.ok) throw new Error(read.reason)
    expect(read.file.mmPerUnit).toBeCloseTo(1, 9)
    const drawing = drawSvg(read.file, 1, 0.001)
    const roles = new Map(
      suggestRoles(drawing).flatMap(({ layer, role }) => (role === null ? [] : [[layer, role] as const])),
    )
    const back = planFromDrawing(drawing, roles, { matchMm: 0.001, toOrigin: false })
    expect(back.issues).toEqual([])
    expect(points(back.outline)).toEqual(points(plan.outline))
    expect(back.cutOuts.map(points)).toEqual(plan.cutOuts.map(({ nodes }) => points(nodes)))
    expect(back.holes).toHaveLength(6)
  })
})

describe('what layers are', () => {
  const drawing = (...names: string[]) => ({
    layers: names.map((name) => ({ name, strokes: 1, isHidden: name === 'HIDDEN_OUTLINE' })),
    strokes: names.map((layer, at) => ({
      layer,
      line: 1,
      circle: null,
      point: null,
      pieces: [{ from: [0, 0] as const, via: null, to: [at + 1, at + 1] as const }],
    })),
    issues: [],
  })
  const suggest = (...names: string[]) =>
    suggestRoles(drawing(...names)).map(({ role, reason }) => `${role}: ${reason}`)

  it('is suggested by name with the reason, and asked where the name says nothing', () => {
    expect(suggest('Board_Outline', 'Fold lines', 'stiffener outline', 'xyz', 'HIDDEN_OUTLINE')).toEqual([
      'outline: Its name holds "Board".',
      'bendLines: Its name holds "Fold".',
      'stiffeners: Its name holds "stiff".',
      'null: Nothing in its name says what it is.',
      'null: It is switched off in the file.',
    ])
  })
  it('where none is called an outline, the one that reaches furthest is suggested', () => {
    expect(suggest('0', 'LARGE')).toEqual([
      'null: Nothing in its name says what it is.',
      'outline: No layer is called an outline, and this one reaches furthest.',
    ])
  })
})

describe('an import', () => {
  it('leaves out what is not what its layer is, with the reason, and takes the rest', () => {
    const plan = furnished('strip')
    const open = { ...plan, outline: plan.outline }
    const read = readDxf(bytes(planAsDxf(open, DIAMETERS)))
    if (!read.ok) throw new Error(read.reason)
    const drawing = drawDxf(read.file, 1, 0.001)
    const back = planFromDrawing(
      drawing,
      new Map([
        ['OUTLINE', 'bendLines'],
        ['DIVIDING_LINES', 'cutOuts'],
        ['BEND_LINES', 'holes'],
        ['STIFFENERS', 'slits'],
      ]),
      { matchMm: 0.001, toOrigin: false },
    )
    expect(back.outline).toBe(null)
    expect(back.issues.map(({ message }) => message)).toEqual([
      'cut-outs: the way from (20, 0) to (20, 12) does not close (12 mm apart): left out',
      'slits: a closed way is none: left out',
      'bend lines: not one straight line, left out',
      'holes: not a full circle, left out',
    ])
  })

  it('can be put at the origin', () => {
    const plan = furnished('strip')
    const far = {
      ...EMPTY_PLAN,
      outline: (plan.outline ?? []).map(({ atMm: [x, y] }) => ({
        atMm: [x + 1000, y - 77] as [number, number],
        viaMm: null,
      })),
    }
    expect(points(fromDxf(planAsDxf(far, DIAMETERS), true).outline)).toEqual(points(plan.outline))
  })
})
