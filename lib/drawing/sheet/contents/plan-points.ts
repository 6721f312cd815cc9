import { edgesOfLoop, edgesOfPath } from '@/lib/geometry'
import { NM_PER_MM, type Plan, pathInNm } from '@/lib/plan'
import type { SheetColumn, SheetTable } from './model'
import type { SheetWords } from './words'

const column = (label: string, leastMm: number, growth = 0, isNumeric = false): SheetColumn => ({
  label,
  leastMm,
  growth,
  isNumeric,
})

/** More points than these are left to the exchange formats: a table of thousands is built from by nobody. */
const MOST_POINTS = 600

/** Every path of the plan by its points, with the arc to the next: what the view shows can be built from this table alone. */
export function makePointTable(plan: Plan, words: SheetWords): SheetTable {
  const mm = words.planUnit
  const paths = listPaths(plan)
  const count = paths.reduce((sum, { nodes }) => sum + nodes.length, 0)
  const shown = count > MOST_POINTS ? paths.slice(0, 1) : paths
  return {
    kind: 'table',
    id: 'plan-points',
    title:
      count > MOST_POINTS
        ? `Points of the outline; ${count} points of the whole plan are too many for a sheet and go out in its exchange format`
        : 'Points of the plan, from its origin',
    keyColumnCount: 2,
    columns: [
      column('Path', 30, 1),
      column('Point', 13, 0, true),
      column(`x, ${mm}`, 20, 0, true),
      column(`y, ${mm}`, 20, 0, true),
      column(`Arc to the next: radius, ${mm}`, 24, 0, true),
      column(`through x, ${mm}`, 20, 0, true),
      column(`through y, ${mm}`, 20, 0, true),
    ],
    rows: shown.flatMap(({ id, name, nodes, isClosed }) => {
      const edges = isClosed ? edgesOfLoop(pathInNm(nodes)) : edgesOfPath(pathInNm(nodes))
      return nodes.map(({ atMm, viaMm }, index) => {
        const edge = edges[index]
        const radiusMm = edge?.kind === 'arc' ? Math.round((edge.radiusNm / NM_PER_MM) * 1e4) / 1e4 : null
        return {
          id: `${id}-${index + 1}`,
          cells: [
            name,
            String(index + 1),
            words.plan(atMm[0]),
            words.plan(atMm[1]),
            radiusMm === null ? '–' : words.plan(radiusMm),
            viaMm === null ? '–' : words.plan(viaMm[0]),
            viaMm === null ? '–' : words.plan(viaMm[1]),
          ],
        }
      })
    }),
  }
}

interface NamedPath {
  readonly id: string
  readonly name: string
  readonly nodes: NonNullable<Plan['outline']>
  readonly isClosed: boolean
}

function listPaths(plan: Plan): NamedPath[] {
  return [
    ...(plan.outline === null ? [] : [{ id: 'outline', name: 'outline', nodes: plan.outline, isClosed: true }]),
    ...plan.cutOuts.map(({ id, name, nodes }) => ({
      id: `cut-out-${id}`,
      name: `cut-out ${name}`,
      nodes,
      isClosed: true,
    })),
    ...plan.slits.map(({ id, name, nodes }) => ({ id: `slit-${id}`, name: `slit ${name}`, nodes, isClosed: false })),
    ...plan.dividingLines.map(({ id, name, nodes }) => ({
      id: `line-${id}`,
      name: `border: ${name}`,
      nodes,
      isClosed: false,
    })),
  ]
}
