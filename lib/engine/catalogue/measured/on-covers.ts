import type { ArtworkFileFacts, OnPlanFacts } from '@/lib/artwork'
import type { EvaluationContext } from '../../context'
import { DESIGN_PLACE, type Outcome, type Place } from '../../results'
import { decide, makeNoneAllowed } from '../decide'
import { findMethodLimit } from '../method-limits'
import type { ArtworkInView } from './artwork-in-view'
import { type FoundInBend, formatPointMm, judge, nameBend, spotIn } from './in-bends'
import { within } from './on-layers'

/** A file of a coverlay that covers more of the part than this draws the film itself, and no openings. Our choice. */
const MOST_OPEN_FRACTION = 0.5
/** Arcs are flattened to within 1 um, and two of them may face each other. */
const TOLERANCE_MM = 0.002

/** The narrowest strip between two openings of each coverlay. */
export const webs = (context: EvaluationContext, view: ArtworkInView): Outcome[] =>
  checkByMethod(context, view, {
    key: 'coverlayWeb',
    what: 'narrowest strip of coverlay between openings',
    equation: 'between openings that do not hang together',
    read: ({ leastWeb }) => leastWeb,
  })

/** The narrowest opening of each coverlay. */
export const openingSizes = (context: EvaluationContext, view: ArtworkInView): Outcome[] =>
  checkByMethod(context, view, {
    key: 'coverlayOpening',
    what: 'narrowest opening of the coverlay',
    equation: 'between edges of an opening that face each other, or across the whole of it',
    read: ({ leastOpening }) => leastOpening,
  })

type Openings = NonNullable<ArtworkFileFacts['openings']>

/** Where openings are made in several ways, only what holds or fails for each of them is said. */
function checkByMethod(
  context: EvaluationContext,
  view: ArtworkInView,
  options: {
    readonly key: 'coverlayWeb' | 'coverlayOpening'
    readonly what: string
    readonly equation: string
    readonly read: (openings: Openings) => Openings['leastWeb']
  },
): Outcome[] {
  const { key, what, equation, read } = options
  const { design, drawing } = context
  const partMm2 = drawing.measures?.part?.areaMm2 ?? null
  if (partMm2 === null) return []
  const { coverlayOpenings } = design.features
  const methods = coverlayOpenings.length === 0 ? [null] : [...new Set(coverlayOpenings.map(({ method }) => method))]
  const limits = methods
    .map((method) => findMethodLimit(context, key, method))
    .sort((one, other) => one.value - other.value)
  const [loosest, strictest] = [limits[0], limits.at(-1)]
  if (loosest === undefined || strictest === undefined) return []
  return view.covers.flatMap(({ name, role, openings }): Outcome[] => {
    if (openings === null || openings.areaMm2 > MOST_OPEN_FRACTION * partMm2) return []
    const found = read(openings)
    if (found === null) return []
    const { mm, atMm } = found
    const isBetween = mm < strictest.value - TOLERANCE_MM && mm >= loosest.value - TOLERANCE_MM
    // Nobody said how the openings are made, and a method that asks for more may be meant.
    const isOpen = methods.includes(null) && mm < context.getLimit(`${key}PunchMm`).value && mm >= loosest.value
    if (isBetween || isOpen) return []
    const value = Math.abs(mm - strictest.value) <= TOLERANCE_MM ? strictest.value : mm
    return [
      decide({
        value,
        limit: strictest,
        places: [coverOf(context, role.side)],
        what: `${what}${atSide(role.side)}`,
        equation,
        artworkAt: spotIn('files', atMm),
        remark: `Measured in ${name}, at ${formatPointMm(atMm)} of the file.`,
      }),
    ]
  })
}

type Side = ArtworkFileFacts['role']['side']

const atSide = (side: Side): string => (side === null ? '' : ` at the ${side}`)

/** Openings against bends as they are now. */
export function openingsToBends(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  const limit = context.getLimit('openingToBendMm')
  return checkBands(context, view, view.onPlan?.covers ?? [], ({ mm }, side, name) => ({
    value: within(mm, limit),
    limit,
    what: `nearest opening of the coverlay${atSide(side)} to ${name}`,
    equation: 'from the edge of the opening to the border of the bend',
  }))
}

export const coverEdgesInBends = (context: EvaluationContext, view: ArtworkInView): Outcome[] =>
  checkBands(context, view, view.onPlan?.covers ?? [], ({ mm }, side, name) => ({
    value: mm > 0 ? 0 : 1,
    limit: makeNoneAllowed('coverlayEdgesInBendCount', 'guideCircuitConstruction'),
    what: `edges of the coverlay${atSide(side)} inside ${name}`,
    equation: 'openings that reach into the bend',
  }))

export function stiffenersToBends(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  const limit = context.getLimit('bendToRigidMm')
  return checkBands(context, view, view.onPlan?.stiffeners ?? [], ({ mm }, side, name) => ({
    value: within(mm, limit),
    limit,
    what: `nearest edge of a stiffener${atSide(side)} to ${name}`,
    equation: 'from the edge of the stiffener to the border of the bend, 0 where it lies in it',
  }))
}

type Cover = Pick<OnPlanFacts['covers'][number], 'fileName' | 'side' | 'bands'>

/** What a file draws near each bend that still lies where it was measured. */
function checkBands(
  context: EvaluationContext,
  view: ArtworkInView,
  files: readonly Cover[],
  find: (near: Cover['bands'][number], side: Side, name: string) => Omit<FoundInBend, 'atMm'>,
): Outcome[] {
  return files.flatMap(({ fileName, side, bands }) =>
    bands.flatMap((near): Outcome[] => {
      const band = view.bands.find(({ lineId, basis }) => lineId === near.lineId && basis === near.basis)
      if (band === undefined) return []
      const { name, place } = nameBend(context, band)
      return [judge(view, { ...find(near, side, name), atMm: near.atMm }, [place], fileName)]
    }),
  )
}

/** How far stiffeners reach past the ends of the coverlay. */
export function stiffenerOverlaps(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  if (!view.isPlanSame) return []
  const limit = context.getLimit('stiffenerOverlapMm')
  return (view.onPlan?.stiffeners ?? []).flatMap(({ fileName, side, overlap }) =>
    overlap === null
      ? []
      : [
          judge(
            view,
            {
              value: within(overlap.mm, limit),
              limit,
              what: `stiffener${atSide(side)} past the end of the coverlay`,
              atMm: overlap.atMm,
              equation:
                'from its edge on the film to the nearest edge of an opening that it covers, 0 where it ends in one',
            },
            [DESIGN_PLACE],
            fileName,
          ),
        ],
  )
}

/** Holes beside the edges of stiffeners. */
export function holesToStiffeners(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  if (!view.isPlanSame) return []
  const limit = context.getLimit('holeToStiffenerEdgeMm')
  return (view.onPlan?.stiffeners ?? []).flatMap(({ fileName, side, nearestHole }) =>
    nearestHole === null
      ? []
      : [
          judge(
            view,
            {
              value: within(nearestHole.mm, limit),
              limit,
              what: `nearest drilled hole to an edge of the stiffener${atSide(side)}`,
              atMm: nearestHole.atMm,
              equation: 'from its edge on the film to the wall of the hole',
            },
            [DESIGN_PLACE],
            fileName,
          ),
        ],
  )
}

/** Lands on film without a hole: held by the coverlay over their rim, or by spurs under it. */
export function landsHeld(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  if (!view.isPlanSame) return []
  const [limit, spurs] = [context.getLimit('coverlayCaptureMm'), context.getLimit('padAnchorCount')]
  return (view.onPlan?.covers ?? []).flatMap(({ fileName, side, zones }) =>
    zones.flatMap(({ zoneId, lands }): Outcome[] => {
      const zone = context.design.construction.zones.find(({ id }) => id === zoneId)
      if (zone === undefined) return []
      return lands.map(({ spurCount, count, leastRim }) => {
        const isHeldBySpurs = spurCount !== null && spurCount >= spurs.value
        const isHeldByRim = leastRim.mm >= limit.value - TOLERANCE_MM
        const which = `${count === 1 ? 'one land' : `${count} lands`} in ${zone.name}${atSide(side)}`
        const found =
          isHeldBySpurs && !isHeldByRim
            ? {
                value: spurCount,
                limit: spurs,
                what: `spurs under the coverlay of ${which}`,
                equation: 'copper that runs straight under the coverlay, less the conductor itself',
              }
            : {
                value: within(Math.max(0, leastRim.mm), limit),
                limit,
                what: `coverlay over the rim of ${which} with ${spurCount === null ? 'no spur that is certain' : spurCount === 0 ? 'no spur' : `${spurCount} spurs`}`,
                equation:
                  'from the rim of the land to the edge of the opening, where it is least; 0 where the opening is wider',
              }
        const isUnclear = spurCount === null && !isHeldByRim
        return judge(
          view,
          {
            ...found,
            atMm: leastRim.atMm,
            ...(isUnclear
              ? {
                  open: {
                    because: 'copper leaves the land in several places and turns before the coverlay covers it',
                    decidedBy: 'look at that place',
                  },
                }
              : {}),
          },
          [{ kind: 'zone', id: zone.id, name: zone.name }],
          fileName,
        )
      })
    }),
  )
}

/** The outermost coverlay of that side; the design where there is none, or no side is said. */
function coverOf({ design }: EvaluationContext, side: 'top' | 'bottom' | 'inner' | null): Place {
  const films = design.construction.layers.filter(({ kind }) => kind === 'coverlay-film')
  const film = side === 'top' ? films[0] : side === 'bottom' ? films.at(-1) : undefined
  return film === undefined ? DESIGN_PLACE : { kind: 'layer', id: film.id, name: film.name }
}

/** Lands on film into which a conductor runs without growing wider. */
export function teardrops(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  if (!view.isPlanSame) return []
  const films = context.design.construction.zones.filter(({ kind }) => kind !== 'rigid')
  return (view.onPlan?.layers ?? []).flatMap(({ fileName, zones }) =>
    zones.flatMap(({ zoneId, joinedLands: { count, bareCount, firstBareAtMm } }): Outcome[] => {
      const zone = films.find(({ id }) => id === zoneId)
      const layer = view.layerOf(fileName)
      if (zone === undefined || layer === null || count === 0) return []
      return [
        judge(
          view,
          {
            value: bareCount,
            limit: makeNoneAllowed('landsWithoutTeardropCount', 'guideDesignRules'),
            what: `lands of ${layer.name} in ${zone.name} without a teardrop, of ${count} that a conductor runs into`,
            atMm: firstBareAtMm,
            equation: "copper beside the conductor just outside of the land's edge",
          },
          [
            { kind: 'zone', id: zone.id, name: zone.name },
            { kind: 'layer', id: layer.id, name: layer.name },
          ],
          fileName,
        ),
      ]
    }),
  )
}
