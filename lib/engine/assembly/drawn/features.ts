import type { Plan, PlanMeasures } from '@/lib/plan'
import { type ConductorFeature, type Design, type Features, listStiffeners } from '../../design'
import type { Place } from '../../results'
import { asMm, asWholeUm, type Pen, withFields } from './pen'

type PlacedList = 'holes' | 'components' | 'coverlayOpenings' | 'stiffeners'
type Placed = PlanMeasures['placed'][PlacedList][number]

const PLACE_KINDS = {
  holes: 'hole',
  components: 'component',
  coverlayOpenings: 'coverlay-opening',
  stiffeners: 'stiffener',
} as const

/** Distances of what lies on the part, crossings of routes, and how near copper comes to the outline. */
export function drawFeatures(design: Design, plan: Plan, measures: PlanMeasures, pen: Pen): Design {
  const { features } = design
  // A bend that is not drawn may be the nearest one: then no distance to a bend is drawn.
  const drawnBends = new Set(measures.bands.map(({ bendId }) => bendId))
  const areAllDrawn = design.bends.length > 0 && design.bends.every(({ id }) => drawnBends.has(id))
  const options = { design, pen, areAllDrawn }
  return {
    ...design,
    features: {
      ...features,
      holes: drawList(features.holes, 'holes', measures, options, (hole, index, placed) => ({
        ...drawZoneOf(hole, index, placed, options),
        ...drawNumber(
          hole,
          'holes',
          index,
          'transitionDistanceMm',
          placed.transitionMm,
          'distance to the transition of',
          pen,
        ),
        ...(placed.isOnStiffener
          ? drawNumber(
              hole,
              'holes',
              index,
              'stiffenerEdgeDistanceMm',
              placed.stiffenerEdgeMm,
              'distance to a stiffener edge of',
              pen,
            )
          : {}),
      })),
      components: drawList(features.components, 'components', measures, options, (component, index, placed) =>
        drawNumber(
          component,
          'components',
          index,
          'transitionDistanceMm',
          placed.transitionMm,
          'distance to the transition of',
          pen,
        ),
      ),
      coverlayOpenings: drawList(features.coverlayOpenings, 'coverlayOpenings', measures, options, () => ({})),
      stiffeners: drawStiffeners(design, measures, options),
      slits: drawSlits(features.slits, measures, pen),
      conductors: features.conductors.map((conductor, index) =>
        drawCrossings(conductor, index, plan, measures, options),
      ),
      copperToOutlineMm: drawCopperToOutline(features.copperToOutlineMm, measures, pen),
    },
  }
}

interface Options {
  readonly design: Design
  readonly pen: Pen
  readonly areAllDrawn: boolean
}

interface WithNearestBend {
  readonly id: string
  readonly name: string
  readonly nearestBend: Features['holes'][number]['nearestBend']
}

function drawList<T extends WithNearestBend>(
  entries: readonly T[],
  list: PlacedList,
  measures: PlanMeasures,
  options: Options,
  more: (entry: T, index: number, placed: Placed) => Partial<T>,
): T[] {
  return entries.map((entry, index) => {
    const placed = measures.placed[list].find(({ id }) => id === entry.id)
    if (placed === undefined) return entry
    return withFields(entry, { ...drawNearest(entry, list, index, placed, options), ...more(entry, index, placed) })
  })
}

/** A bare stiffener of the construction gets an entry where the plan says more of it. */
function drawStiffeners(design: Design, measures: PlanMeasures, options: Options): Features['stiffeners'] {
  const drawn = new Set(measures.placed.stiffeners.map(({ id }) => id))
  const known = new Set(design.features.stiffeners.map(({ id }) => id))
  const bare = listStiffeners(design).filter(({ id }) => drawn.has(id) && !known.has(id))
  return drawList([...design.features.stiffeners, ...bare], 'stiffeners', measures, options, () => ({}))
}

function drawNearest<T extends WithNearestBend>(
  entry: T,
  list: PlacedList,
  index: number,
  { nearestBend }: Placed,
  { design, pen, areAllDrawn }: Options,
): Partial<T> {
  if (!areAllDrawn || nearestBend === null) return {}
  const bendName = design.bends.find(({ id }) => id === nearestBend.bendId)?.name ?? nearestBend.bendId
  const drawn = { bendId: nearestBend.bendId, distanceMm: asMm(nearestBend.distanceMm) }
  const places: Place[] = [
    { kind: PLACE_KINDS[list], id: entry.id, name: entry.name },
    { kind: 'bend', id: drawn.bendId, name: bendName },
  ]
  const path = ['features', list, index, 'nearestBend']
  pen.note({
    path: [...path, 'distanceMm'],
    what: `distance of ${entry.name} from the nearest bend`,
    unit: 'mm',
    stated: entry.nearestBend?.distanceMm ?? null,
    drawn: drawn.distanceMm,
    places,
  })
  const stated = entry.nearestBend
  const isSame = stated?.bendId === drawn.bendId && stated.distanceMm === drawn.distanceMm
  return isSame ? {} : ({ nearestBend: drawn } as Partial<T>)
}

function drawNumber<T extends { readonly id: string; readonly name: string }, K extends keyof T & string>(
  entry: T,
  list: PlacedList,
  index: number,
  key: K,
  measuredMm: number | null,
  words: string,
  pen: Pen,
): Partial<T> {
  if (measuredMm === null) return {}
  const drawn = asMm(measuredMm)
  const stated = entry[key] as number | null
  const places: Place[] = [{ kind: PLACE_KINDS[list], id: entry.id, name: entry.name }]
  pen.note({ path: ['features', list, index, key], what: `${words} ${entry.name}`, unit: 'mm', stated, drawn, places })
  return stated === drawn ? {} : ({ [key]: drawn } as Partial<T>)
}

/** A hole, or pattern, that lies in one zone is in that zone. */
function drawZoneOf(
  hole: Features['holes'][number],
  index: number,
  { zoneIds }: Placed,
  { design, pen }: Options,
): Partial<Features['holes'][number]> {
  const [zoneId, ...others] = zoneIds
  if (zoneId === undefined || others.length > 0) return {}
  const nameOf = (id: string | null) => design.construction.zones.find((zone) => zone.id === id)?.name ?? id
  pen.note({
    path: ['features', 'holes', index, 'zoneId'],
    what: `zone of ${hole.name}`,
    unit: null,
    stated: nameOf(hole.zoneId),
    drawn: nameOf(zoneId),
    places: [{ kind: 'hole', id: hole.id, name: hole.name }],
  })
  return hole.zoneId === zoneId ? {} : { zoneId }
}

function drawSlits(slits: Features['slits'], measures: PlanMeasures, pen: Pen): Features['slits'] {
  return slits.map((slit, index) => {
    const lines = measures.slits.filter(({ slitId, closedEnds }) => slitId === slit.id && closedEnds > 0)
    const reliefs = lines.flatMap(({ reliefDiameterMm }) => reliefDiameterMm ?? [])
    // An end whose relief is not drawn may be the worst: what was stated of it stays.
    if (lines.length === 0 || reliefs.length < lines.length) return slit
    const drawn = Math.min(...reliefs)
    pen.note({
      path: ['features', 'slits', index, 'endReliefDiameterMm'],
      what: `relief diameter of ${slit.name}`,
      unit: 'mm',
      stated: slit.endReliefDiameterMm,
      drawn,
      places: [{ kind: 'slit', id: slit.id, name: slit.name }],
    })
    return withFields(slit, slit.endReliefDiameterMm === drawn ? {} : { endReliefDiameterMm: drawn })
  })
}

/** Crossings of a conductor whose route is drawn, at bends whose lines are drawn; the others stay as stated. */
function drawCrossings(
  conductor: ConductorFeature,
  index: number,
  plan: Plan,
  { routes, bands }: PlanMeasures,
  { design, pen }: Options,
): ConductorFeature {
  if (!plan.routes.some(({ conductorId }) => conductorId === conductor.id)) return conductor
  const known = new Set(bands.filter(({ region }) => region !== null).map(({ bendId }) => bendId))
  const drawn = routes.crossings.filter(({ conductorId }) => conductorId === conductor.id)
  const nameOf = (bendId: string) => design.bends.find(({ id }) => id === bendId)?.name ?? bendId
  const crossings = drawn.map(({ bendId, angleToAxisDeg, widthChangesInside, directionChangesInside }) => {
    const stated = conductor.crossings.find((crossing) => crossing.bendId === bendId)
    // Routes run between whole micrometres, which turn a stroke of a millimetre by 0.06°: a hundredth is far below what they are drawn to.
    const angleDeg = Math.round(angleToAxisDeg * 100) / 100
    const places: Place[] = [
      { kind: 'conductor', id: conductor.id, name: conductor.name },
      { kind: 'bend', id: bendId, name: nameOf(bendId) },
    ]
    const path = ['features', 'conductors', index, 'crossings', bendId]
    const what = (words: string) =>
      `${words} ${conductor.name} ${words === 'angle of' ? 'to the axis of' : 'inside'} ${nameOf(bendId)}`
    pen.note({
      path: [...path, 'angleToAxisDeg'],
      what: what('angle of'),
      unit: 'deg',
      stated: stated?.angleToAxisDeg ?? null,
      drawn: angleDeg,
      places,
    })
    pen.note({
      path: [...path, 'directionChangesInside'],
      what: what('change of direction of'),
      unit: null,
      stated: stated?.directionChangesInside ?? null,
      drawn: directionChangesInside,
      places,
    })
    return {
      bendId,
      angleToAxisDeg: angleDeg,
      // Coarse routes show where the width changes between them, and not that it changes nowhere.
      widthChangesInside: widthChangesInside === true ? true : (stated?.widthChangesInside ?? null),
      directionChangesInside,
    }
  })
  for (const stated of conductor.crossings) {
    if (!known.has(stated.bendId) || drawn.some(({ bendId }) => bendId === stated.bendId)) continue
    pen.note({
      path: ['features', 'conductors', index, 'crossings', stated.bendId],
      what: `crossing of ${conductor.name} and ${nameOf(stated.bendId)}`,
      unit: null,
      stated: 'stated',
      drawn: 'not drawn',
      places: [{ kind: 'conductor', id: conductor.id, name: conductor.name }],
    })
  }
  const kept = conductor.crossings.filter(({ bendId }) => !drawn.some((crossing) => crossing.bendId === bendId))
  return withFields(conductor, { crossings: [...crossings, ...kept] })
}

/** Routes are coarse: they can bring copper nearer to the outline than was stated, and not further away. */
function drawCopperToOutline(statedMm: number | null, { routes }: PlanMeasures, pen: Pen): number | null {
  const drawn = routes.copperToOutlineMm === null ? null : asWholeUm(routes.copperToOutlineMm)
  if (drawn === null || statedMm === null || drawn >= statedMm) return statedMm
  pen.note({
    path: ['features', 'copperToOutlineMm'],
    what: 'distance of copper from the outline',
    unit: 'mm',
    stated: statedMm,
    drawn,
    places: [{ kind: 'design', id: 'design', name: 'Design' }],
  })
  return drawn
}
