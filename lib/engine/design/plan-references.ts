import { checkPlan, type Plan } from '@/lib/plan'
import type { Issue } from '../results'
import type { Design } from './design'
import { listStiffeners } from './stiffeners'

/** What is wrong with a design's plan: its paths, and names in it that nothing else of the design has. */
export function findPlanIssues(design: Design): Issue[] {
  const { plan } = design
  if (plan === null) return []
  const issues = checkPlan(plan).map((issue): Issue => ({ ...issue, path: ['plan', ...issue.path] }))
  return [...issues, ...findUnknownReferences(design, plan)]
}

/** Which list of the plan names which part of the design, and by which field. */
function findUnknownReferences(design: Design, plan: Plan): Issue[] {
  const { construction, features, bends } = design
  const idsOf = (list: readonly { readonly id: string }[]) => new Set(list.map(({ id }) => id))
  const layers = (kinds: readonly string[]) => idsOf(construction.layers.filter(({ kind }) => kinds.includes(kind)))
  const issues: Issue[] = []
  const check = <K extends keyof Plan>(
    list: K,
    field: string,
    word: string,
    known: ReadonlySet<string>,
    entries: readonly { readonly ref: string | null }[],
  ) => {
    entries.forEach(({ ref }, index) => {
      if (ref !== null && !known.has(ref)) {
        issues.push({
          code: `unknown-${word.replaceAll(' ', '-')}`,
          path: ['plan', list, index, field],
          message: `no ${word} "${ref}" in this design`,
        })
      }
    })
  }
  const refs = <E>(list: readonly E[], read: (entry: E) => string | null) => list.map((entry) => ({ ref: read(entry) }))
  check(
    'areas',
    'zoneId',
    'zone',
    idsOf(construction.zones),
    refs(plan.areas, ({ zoneId }) => zoneId),
  )
  check(
    'bendLines',
    'bendId',
    'bend',
    idsOf(bends),
    refs(plan.bendLines, ({ bendId }) => bendId),
  )
  check(
    'slits',
    'slitId',
    'slit',
    idsOf(features.slits),
    refs(plan.slits, ({ slitId }) => slitId),
  )
  check(
    'stiffeners',
    'stiffenerId',
    'stiffener',
    idsOf(listStiffeners(design)),
    refs(plan.stiffeners, ({ stiffenerId }) => stiffenerId),
  )
  check(
    'connectorEnds',
    'connectorId',
    'connector',
    idsOf(features.connectors),
    refs(plan.connectorEnds, ({ connectorId }) => connectorId),
  )
  check(
    'coverlayOpenings',
    'openingId',
    'coverlay opening',
    idsOf(features.coverlayOpenings),
    refs(plan.coverlayOpenings, ({ openingId }) => openingId),
  )
  check(
    'coverlayOpenings',
    'layerId',
    'coverlay layer',
    layers(['coverlay-film', 'solder-mask']),
    refs(plan.coverlayOpenings, ({ layerId }) => layerId),
  )
  check(
    'holes',
    'holeId',
    'hole',
    idsOf(features.holes),
    refs(plan.holes, ({ holeId }) => holeId),
  )
  check(
    'pads',
    'padId',
    'pad',
    idsOf(features.pads),
    refs(plan.pads, ({ padId }) => padId),
  )
  check(
    'components',
    'componentId',
    'component',
    idsOf(features.components),
    refs(plan.components, ({ componentId }) => componentId),
  )
  check(
    'routes',
    'conductorId',
    'conductor',
    idsOf(features.conductors),
    refs(plan.routes, ({ conductorId }) => conductorId),
  )
  check(
    'routes',
    'layerId',
    'conductor layer',
    layers(['conductor']),
    refs(plan.routes, ({ layerId }) => layerId),
  )
  check(
    'corners',
    'cornerId',
    'outline corner',
    idsOf(features.outlineCorners),
    refs(plan.corners, ({ cornerId }) => cornerId),
  )
  const held = plan.housing?.heldAreaId ?? null
  if (held !== null && !plan.areas.some(({ id }) => id === held)) {
    issues.push({
      code: 'unknown-area',
      path: ['plan', 'housing', 'heldAreaId'],
      message: `no area "${held}" in this plan`,
    })
  }
  return issues
}
