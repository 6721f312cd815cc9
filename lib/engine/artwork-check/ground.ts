import type { GroundBand, PlanGround } from '@/lib/artwork'
import { flattenEdges, type LineOrArc, type Region } from '@/lib/geometry'
import { areasOf, NM_PER_MM, toNm } from '@/lib/plan'
import { drawDimensions } from '../assembly/drawn'
import type { Design, Drawing } from '../design'

/** Arcs of the plan are followed this nearly: far below any tolerance of an outline. */
const FLATTENING_NM = 500

/** What artwork of a design is laid over; null where its plan draws no part. Works out the plan's bands, which are kept for each plan. */
export const groundOf = (design: Design): PlanGround | null =>
  design.plan === null ? null : groundOfDrawing(drawDimensions(design))

export function groundOfDrawing({ design, measures }: Pick<Drawing, 'design' | 'measures'>): PlanGround | null {
  const { plan } = design
  if (plan === null || measures === null) return null
  const { part, areas } = areasOf(plan)
  if (part === null) return null
  const kinds = new Map(design.construction.zones.map(({ id, kind }) => [id, kind]))
  const drills = new Map(design.features.holes.map(({ id, drillMm }) => [id, drillMm]))
  const ground = {
    part: ringsOf(part),
    zones: areas.flatMap(({ zoneId, region }) =>
      zoneId === null
        ? []
        : [
            {
              zoneId,
              isFinger: kinds.get(zoneId) === 'finger',
              isRigid: kinds.get(zoneId) === 'rigid',
              rings: ringsOf(region),
            },
          ],
    ),
    holes: plan.holes.flatMap(({ holeId, atMm, columns, rows, columnStepMm, rowStepMm }) => {
      const [at, column, row] = [toNm(atMm), toNm(columnStepMm ?? [0, 0]), toNm(rowStepMm ?? [0, 0])]
      const drillMm = drills.get(holeId) ?? null
      return Array.from({ length: columns * rows }, (_, index) => {
        const [i, j] = [index % columns, Math.floor(index / columns)]
        return {
          holeId,
          atNm: [at[0] + i * column[0] + j * row[0], at[1] + i * column[1] + j * row[1]] as const,
          diameterNm: drillMm === null ? null : Math.round(drillMm * NM_PER_MM),
        }
      })
    }),
  }
  const bands = measures.bands.flatMap(({ lineId, bendId, region, widthMm }): Omit<GroundBand, 'basis'>[] => {
    const line = plan.bendLines.find(({ id }) => id === lineId)
    if (line === undefined || region === null || widthMm === null) return []
    return [
      {
        lineId,
        bendId,
        fromNm: toNm(line.fromMm),
        toNm: toNm(line.toMm),
        widthNm: Math.round(widthMm * NM_PER_MM),
        rings: ringsOf(region),
      },
    ]
  })
  return {
    ...ground,
    basis: checksum(JSON.stringify(ground)),
    bands: bands.map((band) => ({ ...band, basis: checksum(JSON.stringify(band)) })),
  }
}

const ringsOf = ({ outer, holes }: Region): number[][] => [outer, ...holes].map(flatten)

const flatten = (edges: readonly LineOrArc[]): number[] =>
  flattenEdges(edges, FLATTENING_NM).flatMap(([x, y]) => [Math.round(x), Math.round(y)])

/** Tells one plan from another in few letters: two runs of FNV-1a over 32 bits (Fowler, Noll, Vo 1991). It protects against nobody. */
function checksum(text: string): string {
  let [one, other] = [0x811c9dc5, 0x01234567]
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at)
    one = Math.imul(one ^ code, 0x01000193)
    other = Math.imul(other ^ (code + at), 0x01000193)
  }
  return [one, other].map((part) => (part >>> 0).toString(16).padStart(8, '0')).join('')
}
