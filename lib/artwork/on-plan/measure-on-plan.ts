import type { CopperStack, StackedCopper } from '../copper/copper-stack'
import { findLeastSpace } from '../copper/spacing'
import { ringsOfOutline } from '../facts/outline-loops'
import { NM_PER_MM } from '../limits'
import { listHoles } from '../nets/set-nets'
import type { ArtworkSet } from '../set/read-set'
import type { FlatPath } from '../shape/path'
import { watchConductors } from './band-conductors'
import { areaOfPaths, copperIn, overlapOf } from './cover'
import { type CoverGround, measureCovers, measureStiffeners } from './covers'
import { edgesIn } from './edges-in'
import type { GroundBand, PlanGround } from './ground'
import { describeHatch, measureSolid } from './hatches'
import { matchHoles, measureBandHoles } from './holes'
import { ON_PLAN_VERSION, type OnPlanBand, type OnPlanBandLayer, type OnPlanFacts } from './on-plan-facts'
import { mapPath, toArtwork, toPlan } from './placement'
import { type Registration, registerOutline } from './register'
import { areaOfRings } from './rings'
import { objectsNear, piecesIn } from './strokes'
import { findJoinedLands, StrokeEnds } from './teardrops'
import { measureToOutline } from './to-outline'
import { nearestHoleToOutline, nearestToTransitions } from './transitions'
import { findWidthSteps, stepsIn } from './width-steps'

/** Arcs of a profile are followed this nearly. */
const OUTLINE_TOLERANCE_NM = 1000
/** More copper than this in a bend is a plane with gaps, over which any conductor lies: staggering says nothing there. Our choice. */
const PLANE_FRACTION = 0.7

/**
 * Lays a set over a plan and measures its copper and holes there: in each zone and bend, every figure with its place in the plan's coordinates. Work for a thread.
 *
 * @param stack  what the set's copper covers
 */
export function measureOnPlan(
  set: ArtworkSet,
  stack: CopperStack,
  ground: PlanGround,
  onProgress: (fraction: number) => void = () => {},
): OnPlanFacts {
  const head = {
    version: ON_PLAN_VERSION,
    planBasis: ground.basis,
    unorderedReason: stack.unorderedReason,
  }
  const unplaced = (unplacedReason: string): OnPlanFacts => ({
    ...head,
    unplacedReason,
    registration: null,
    layers: [],
    bands: [],
    holes: [],
    platedHoleToOutline: null,
    transitions: null,
    covers: [],
    stiffeners: [],
  })
  const profiles = set.files.flatMap(({ role, reading }) =>
    role.role === 'profile' && reading.kind === 'gerber' ? [ringsOfOutline(reading.objects, OUTLINE_TOLERANCE_NM)] : [],
  )
  const outline = profiles.find((rings) => rings.length > 0)
  if (profiles.length === 0) return unplaced('no file of the artwork is known to be the profile')
  if (outline === undefined) return unplaced('the strokes of the profile do not close')
  const { all, joining } = listHoles(set, stack.layers.length)
  const registration = registerOutline(
    outline,
    all.map(({ xNm, yNm }) => [xNm, yNm] as const),
    ground,
  )
  if (registration === null) return unplaced('the outline of the artwork fits the plan in no position')
  const toMm = (x: number, y: number): [number, number] => {
    const [px, py] = toPlan(registration, x, y)
    return [Math.round(px) / NM_PER_MM, Math.round(py) / NM_PER_MM]
  }
  // The plan is laid under the artwork rather than the other way round: it has far fewer corners.
  const own = (rings: readonly FlatPath[]) =>
    rings.map((ring) => mapPath(ring, (x, y) => toArtwork(registration, x, y)))
  const bands = ground.bands.map(
    (band): GroundBand => ({
      ...band,
      fromNm: toArtwork(registration, ...band.fromNm),
      toNm: toArtwork(registration, ...band.toNm),
      rings: own(band.rings),
    }),
  )
  const part = own(ground.part)
  const coverGround: CoverGround = {
    part,
    bands,
    films: ground.zones
      .filter(({ isRigid, isFinger }) => !isRigid && !isFinger)
      .map(({ zoneId, rings }) => ({ zoneId, rings: own(rings) })),
    toMm,
  }
  const { covers, openings } = measureCovers(set, stack, all, coverGround)
  const steps = stack.layers.length + bands.length
  const layers = stack.layers.map((layer, place) => {
    const measured = {
      fileName: layer.fileName,
      place,
      zones: measureZones(layer, ground, own, toMm),
      toOutline: measureToOutline(
        layer,
        part,
        ground.zones.filter(({ isFinger }) => isFinger).map(({ rings }) => own(rings)),
        toMm,
      ),
    }
    onProgress((place + 1) / steps)
    return measured
  })
  return {
    ...head,
    unplacedReason: null,
    registration: inMm(registration),
    layers,
    bands: bands.map((band, at) => {
      const measured = measureBand(set, stack, band, toMm)
      onProgress((stack.layers.length + at + 1) / steps)
      return measured
    }),
    holes: matchHoles(ground, all, registration),
    platedHoleToOutline: nearestHoleToOutline(joining, part, toMm),
    transitions: nearestToTransitions(stack, all, ground, own, toMm),
    covers,
    stiffeners: measureStiffeners(set, openings, all, coverGround),
  }
}

function inMm({ isMirrored, turnDeg, shiftNm, fitFraction, isUnique, farthestNm, farthestAtNm }: Registration) {
  return {
    isMirrored,
    turnDeg,
    shiftMm: [shiftNm[0] / NM_PER_MM, shiftNm[1] / NM_PER_MM] as [number, number],
    fitFraction,
    isUnique,
    farthestMm: Math.round(farthestNm) / NM_PER_MM,
    farthestAtMm: [Math.round(farthestAtNm[0]) / NM_PER_MM, Math.round(farthestAtNm[1]) / NM_PER_MM] as [
      number,
      number,
    ],
  }
}

type OwnRings = (rings: readonly FlatPath[]) => FlatPath[]

/** Areas of one zone count together. */
function measureZones(layer: StackedCopper, { zones }: PlanGround, own: OwnRings, toMm: ToMm) {
  const sums = new Map<string, ZoneSum>()
  const steps = findWidthSteps(layer)
  const ends = new StrokeEnds(layer)
  for (const { zoneId, rings } of zones) {
    const placed = own(rings)
    const sum = sums.get(zoneId) ?? { copper: 0, whole: 0, landCount: 0, bare: [], areas: [], edges: [] }
    sum.areas.push(placed)
    sum.edges.push(...edgesIn(layer.edges, placed))
    sum.copper += areaOfPaths(copperIn(layer, placed))
    sum.whole += areaOfRings(placed)
    const lands = findJoinedLands(layer, placed, ends)
    sum.landCount += lands.count
    sum.bare.push(...lands.bare)
    sums.set(zoneId, sum)
  }
  return [...sums].map(([zoneId, { copper, whole, landCount, bare, areas, edges }]) => ({
    zoneId,
    copperFraction: whole === 0 ? 0 : Math.min(1, copper / whole),
    joinedLands: {
      count: landCount,
      bareCount: bare.length,
      firstBareAtMm: bare[0] === undefined ? null : toMm(...bare[0]),
    },
    // Turned by quarters or mirrored, the angle to an axis of the file is that to the plan's.
    hatch: describeHatch(layer, edges, 0, toMm),
    widthSteps: stepsIn(steps, areas, toMm),
  }))
}

interface ZoneSum {
  copper: number
  whole: number
  landCount: number
  readonly bare: (readonly [number, number])[]
  readonly areas: FlatPath[][]
  readonly edges: number[]
}

type ToMm = (x: number, y: number) => [number, number]

function measureBand(set: ArtworkSet, stack: CopperStack, band: GroundBand, toMm: ToMm): OnPlanBand {
  const whole = areaOfRings(band.rings)
  const covered = stack.layers.map((layer) => ({ layer, paths: copperIn(layer, band.rings) }))
  const fractions = covered.map(({ paths }) => (whole === 0 ? 0 : Math.min(1, areaOfPaths(paths) / whole)))
  const layers = covered.map(({ layer }, at) => measureLayerInBand(layer, band, fractions[at] ?? 0, toMm))
  const stacked = covered.slice(1).flatMap(({ layer, paths }, at) => {
    const [upper, lower] = [layers[at], layers[at + 1]]
    const above = covered[at]
    if (above === undefined || upper === undefined || lower === undefined) return []
    // Strokes on both, and no plane: conductors.
    if (upper.pieceCount === 0 || lower.pieceCount === 0) return []
    if (Math.max(upper.copperFraction, lower.copperFraction) > PLANE_FRACTION) return []
    const least = Math.min(areaOfPaths(above.paths), areaOfPaths(paths))
    const shareFraction = least === 0 ? 0 : Math.min(1, overlapOf(above.paths, paths) / least)
    return [{ upper: above.layer.fileName, lower: layer.fileName, shareFraction }]
  })
  return {
    lineId: band.lineId,
    bendId: band.bendId,
    basis: band.basis,
    layers,
    ...measureBandHoles(set, band, toMm),
    stacked,
  }
}

function measureLayerInBand(
  layer: StackedCopper,
  band: GroundBand,
  copperFraction: number,
  toMm: ToMm,
): OnPlanBandLayer {
  const near = objectsNear(layer, band.rings)
  const found = watchConductors(layer, band, piecesIn(layer, band.rings, near), near)
  const edges = edgesIn(layer.edges, band.rings)
  const [fromNm, toNm] = [band.fromNm, band.toNm]
  const axisDeg = (Math.atan2(toNm[1] - fromNm[1], toNm[0] - fromNm[0]) * 180) / Math.PI
  const space = findLeastSpace(layer.edges, { only: edges })
  const turn = found.turns.reduce<(typeof found.turns)[number] | null>(
    (most, each) => (most === null || each.deg > most.deg ? each : most),
    null,
  )
  const [change] = found.widthChanges
  const counted = (places: readonly (readonly [number, number])[]) => ({
    count: places.length,
    firstAtMm: places[0] === undefined ? null : toMm(...places[0]),
  })
  return {
    fileName: layer.fileName,
    copperFraction,
    pieceCount: found.pieceCount,
    narrowest:
      found.narrowest === null
        ? null
        : { widthMm: found.narrowest.widthNm / NM_PER_MM, atMm: toMm(...found.narrowest.at) },
    leastAngle: found.leastAngle === null ? null : { deg: found.leastAngle.deg, atMm: toMm(...found.leastAngle.at) },
    largestTurn: turn === null ? null : { deg: turn.deg, atMm: toMm(...turn.at) },
    turnCount: found.turns.length,
    widthChange:
      change === undefined
        ? null
        : { fromMm: change.fromNm / NM_PER_MM, toMm: change.toNm / NM_PER_MM, atMm: toMm(...change.at) },
    widthChangeCount: found.widthChanges.length,
    ends: counted(found.ends),
    junctions: counted(found.junctions),
    pads: counted(found.pads),
    leastSpace: space === null ? null : { mm: space.spaceNm / NM_PER_MM, atMm: toMm(space.xNm, space.yNm) },
    hatch: describeHatch(layer, edges, axisDeg, toMm),
    solid: measureSolid(layer, band.rings, toMm),
  }
}
