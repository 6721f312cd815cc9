import fc from 'fast-check'
import type { Design } from '@/lib/engine'
import { EMPTY_PLAN, type Plan } from '@/lib/plan'

type Point = [number, number]

const round = (mm: number) => Math.round(mm * 1e6) / 1e6
const share = fc.integer({ min: 0, max: 1000 }).map((part) => part / 1000)

const LONG =
  'Mirror hinge WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW and all that somebody says who describes everything, to the end'
const name = fc.constantFrom(
  'Fold',
  LONG.slice(0, 120),
  'Ümläut ⌀ 折り目',
  'iiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiii',
)

/** Outlines in a unit square: a rectangle, one that bulges, an L, a comb of many teeth, and one of many short ways on a circle. */
function drawOutline(kind: string, [width, height]: Point): NonNullable<Plan['outline']> {
  const node = (x: number, y: number, via: Point | null = null) => ({
    atMm: [round(x * width), round(y * height)] as Point,
    viaMm: via === null ? null : ([round(via[0] * width), round(via[1] * height)] as Point),
  })
  // A thin bulge of a tall part would lie in line with its ends.
  switch (kind === 'bulge' && height > 20 * width ? 'rectangle' : kind) {
    case 'bulge':
      return [node(0, 0), node(0.8, 0, [0.8 + Math.min(0.2, (0.5 * height) / width), 0.5]), node(0.8, 1), node(0, 1)]
    case 'L':
      return [node(0, 0), node(1, 0), node(1, 0.3), node(0.3, 0.3), node(0.3, 1), node(0, 1)]
    case 'comb': {
      const teeth = 14
      const top = Array.from({ length: teeth }, (_, tooth) => {
        const x = 1 - tooth / teeth
        return [node(x, 1), node(x - 0.5 / teeth, 1), node(x - 0.5 / teeth, 0.4), node(x - 1 / teeth, 0.4)]
      }).flat()
      return [node(0, 0), node(1, 0), ...top]
    }
    case 'round':
      return Array.from({ length: 50 }, (_, at) =>
        node(0.5 + 0.5 * Math.cos((at * Math.PI) / 25), 0.5 + 0.5 * Math.sin((at * Math.PI) / 25)),
      )
    default:
      return [node(0, 0), node(1, 0), node(1, 1), node(0, 1)]
  }
}

/** From a tenth of a millimetre to 400 mm, each decade alike: views from 10:1 to 1:10 and beyond. */
const size = fc.double({ min: -0.5, max: Math.log10(400), noNaN: true }).map((decades) => round(10 ** decades))

const list = <T>(each: fc.Arbitrary<T>, maxLength: number) => fc.array(each, { maxLength, size: 'max' })
const pair = fc.tuple(share, share)

/** What a part is made of, in shares of its size. */
const recipe = fc.record({
  width: size,
  height: size,
  outline: fc.constantFrom('rectangle', 'bulge', 'L', 'comb', 'round'),
  name,
  borders: list(share, 8),
  bends: list(fc.record({ at: share, slant: share, isTop: fc.boolean() }), 40),
  holes: list(
    fc.record({ at: pair, columns: fc.integer({ min: 1, max: 5 }), rows: fc.integer({ min: 1, max: 5 }) }),
    12,
  ),
  boxes: list(fc.record({ kind: fc.constantFrom('stiffener', 'component', 'opening'), at: pair, by: pair }), 16),
  cutOut: fc.boolean(),
  slits: list(
    fc.record({
      from: pair,
      to: pair,
      widthMm: fc.constantFrom(null, 0, 0.2, 3),
      reliefs: fc.tuple(fc.constantFrom(null, 0, 0.8, 4), fc.constantFrom(null, 0, 1.2)),
      tearStop: fc.constantFrom(null, true, false),
    }),
    9,
  ),
  stoppedCorners: fc.boolean(),
  dimensions: list(
    fc.record({
      direction: fc.constantFrom('along-x' as const, 'along-y' as const, 'straight' as const),
      from: pair,
      to: pair,
      plusMm: fc.constantFrom(null, 0.1, 0.000125),
      minusMm: fc.constantFrom(null, 0.1, 12.345678),
      isReference: fc.boolean(),
    }),
    30,
  ),
  flags: list(fc.record({ kind: fc.constantFrom('note', 'marking', 'datum'), at: pair, text: name }), 20),
  rolledDeg: fc.constantFrom(null, 0, 37.25, 90),
  array: fc.option(
    fc.record({
      columns: fc.integer({ min: 1, max: 9 }),
      rows: fc.integer({ min: 1, max: 9 }),
      isFramed: fc.boolean(),
    }),
  ),
})

/** Any part, drawn on a design whose entries it draws: everything that is on the plan has its entry, with a name that may be long. */
export const makeAnyPart = (whole: Design): fc.Arbitrary<Design> => recipe.map((parts) => drawPart(whole, parts))

type Recipe = typeof recipe extends fc.Arbitrary<infer T> ? T : never

function drawPart(whole: Design, parts: Recipe): Design {
  const design = structuredClone(whole)
  const { width, height } = parts
  const at = ([x, y]: readonly [number, number]): Point => [round(x * width), round(y * height)]
  const clone = <T extends { id: string; name: string }>(entries: T[], count: number, start: string): T[] => {
    const [first] = entries
    if (first === undefined) return []
    return Array.from({ length: count }, (_, index) => ({
      ...structuredClone(first),
      id: `${start}-${index + 1}`,
      name: `${parts.name} ${index + 1}`.slice(-120).trim(),
    }))
  }
  design.bends = clone(design.bends, parts.bends.length, 'bend')
  design.bends.forEach((bend, index) => {
    bend.insideFace = parts.bends[index]?.isTop === true ? 'top' : 'bottom'
  })
  const features = design.features
  features.holes = clone(features.holes, parts.holes.length, 'hole')
  const boxes = (kind: string) => parts.boxes.filter((box) => box.kind === kind)
  features.components = clone(features.components, boxes('component').length, 'component')
  features.coverlayOpenings = clone(features.coverlayOpenings, boxes('opening').length, 'opening')
  features.slits = parts.slits.map(({ widthMm, reliefs, tearStop }, index) => ({
    id: `slit-${index + 1}`,
    name: `${parts.name} ${index + 1}`.slice(-120).trim(),
    widthMm,
    endReliefDiameterMm: reliefs[0],
    tearStop,
  }))
  for (const corner of features.outlineCorners) corner.tearStop = parts.stoppedCorners
  const stiffenerId = features.stiffeners[0]?.id ?? ''
  const box = (index: number, kind: string) => {
    const wanted = boxes(kind)[index]
    const [x, y] = wanted?.at ?? [0, 0]
    const [far, high] = [
      x + (1 - x) * Math.max(0.01, wanted?.by[0] ?? 0),
      y + (1 - y) * Math.max(0.01, wanted?.by[1] ?? 0),
    ]
    return [at([x, y]), at([far, y]), at([far, high]), at([x, high])].map((atMm) => ({ atMm, viaMm: null }))
  }
  const flags = (kind: string) => parts.flags.filter((flag) => flag.kind === kind)
  const straight = (a: Point, b: Point) => [
    { atMm: a, viaMm: null },
    { atMm: b, viaMm: null },
  ]
  const zones = design.construction.zones
  const borders = [...new Set(parts.borders)].sort((a, b) => a - b).filter((x) => x > 0 && x < 1)
  const plan: Plan = {
    ...EMPTY_PLAN,
    outline: drawOutline(parts.outline, [width, height]),
    cutOuts: parts.cutOut
      ? [
          {
            id: 'window',
            name: parts.name,
            nodes: [at([0.05, 0.05]), at([0.1, 0.05]), at([0.1, 0.1])].map((atMm) => ({ atMm, viaMm: null })),
          },
        ]
      : [],
    slits: parts.slits.map(({ from, to, widthMm, reliefs }, index) => ({
      id: `cut-${index}`,
      name: parts.name,
      slitId: `slit-${index + 1}`,
      nodes: straight(at(from), at([to[0], to[1] === from[1] && to[0] === from[0] ? to[1] / 2 + 0.1 : to[1]])),
      widthMm,
      startReliefDiameterMm: reliefs[0],
      endReliefDiameterMm: reliefs[1],
    })),
    corners: [0.3, 0.4].map((y, index) => ({
      id: `corner-${index}`,
      cornerId: features.outlineCorners[0]?.id ?? '',
      atMm: at([0.3, y]),
    })),
    dividingLines: borders.map((x, index) => ({
      id: `line-${index}`,
      name: parts.name,
      nodes: straight(at([x, 0]), at([x, 1])),
    })),
    areas: [0, ...borders].map((x, index) => ({
      id: `area-${index}`,
      name: parts.name,
      zoneId: zones[index % zones.length]?.id ?? null,
      markMm: at([(x + (borders[index] ?? 1)) / 2, 0.01]),
    })),
    bendLines: parts.bends.map(({ at: x, slant }, index) => ({
      id: `axis-${index}`,
      bendId: `bend-${index + 1}`,
      fromMm: at([x, 0]),
      toMm: at([x + (slant - x) * 0.2, 1]),
    })),
    stiffeners: boxes('stiffener').map((_, index) => ({
      id: `s-${index}`,
      stiffenerId,
      nodes: box(index, 'stiffener'),
    })),
    components: features.components.map(({ id }, index) => ({
      id: `k-${index}`,
      componentId: id,
      face: 'top' as const,
      nodes: box(index, 'component'),
      heightMm: 1,
    })),
    coverlayOpenings: features.coverlayOpenings.map(({ id }, index) => ({
      id: `c-${index}`,
      openingId: id,
      layerId: null,
      nodes: box(index, 'opening'),
    })),
    holes: parts.holes.map(({ at: place, columns, rows }, index) => ({
      id: `h-${index}`,
      holeId: `hole-${index + 1}`,
      atMm: at([place[0] * 0.6, place[1] * 0.6]),
      columns,
      rows,
      columnStepMm: [round(0.04 * width), 0],
      rowStepMm: [0, round(0.04 * height)],
    })),
    dimensions: parts.dimensions.map(({ from, to, ...rest }, index) => ({
      ...rest,
      id: `d-${index}`,
      fromMm: at(from),
      toMm: at(to),
    })),
    notes: flags('note').map(({ at: place, text }, index) => ({
      id: `n-${index}`,
      text: `${text}. `.repeat(12),
      atMm: index % 3 === 0 ? null : at(place),
    })),
    markings: flags('marking').map(({ at: place, text }, index) => ({
      id: `m-${index}`,
      text,
      face: 'top' as const,
      atMm: at(place),
      heightMm: 1,
    })),
    datums: flags('datum').map(({ at: place }, index) => ({
      id: `datum-${index}`,
      letter: `${'ABCDEFGHJKLMNPRSTUVWXYZ'[index] ?? 'ZZ'}`,
      fromMm: at(place),
      toMm: index % 2 === 0 ? null : at([place[0], 1]),
    })),
    rollingDirectionDeg: parts.rolledDeg,
    array:
      parts.array === null
        ? null
        : {
            columns: parts.array.columns,
            rows: parts.array.rows,
            columnStepMm: round(width * 1.1),
            rowStepMm: round(height * 1.1),
            frameMm: parts.array.isFramed ? 5 : null,
            tabs: [{ id: 'tab', atMm: at([0.5, 0]), widthMm: 2 }],
            fiducials: [{ id: 'mark', atMm: at([0, 0]) }],
          },
  }
  return { ...design, name: parts.name, plan }
}
