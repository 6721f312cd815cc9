import { type Design, evaluate } from '@/lib/engine'
import { loadDesign } from '../drawing/demo-design'

export type Path = readonly (string | number)[]

/** Skua A with an entry in every list and a number in every field that takes one. */
function makeFullDesign(): Design {
  const design = structuredClone(loadDesign('skua-rev-a.json').design)
  // A coordinate by itself means nothing: what the sheet says of a plan is tried in test/unit/drawing/plan-sheets.test.ts.
  design.plan = null
  const { features } = design
  const nearestBend = { bendId: 'hinge', distanceMm: 5 }
  const layerId = design.construction.layers.find(({ kind }) => kind === 'conductor')?.id ?? ''
  features.slits.push({ id: 'slit', name: 'Slit', endReliefDiameterMm: 1, widthMm: 1, tearStop: true })
  features.widthSteps.push({
    id: 'step',
    name: 'Step',
    layerId,
    wideMm: 1,
    narrowMm: 1,
    taperLengthMm: 1,
    nearestBend: null,
    clearOfBends: true,
  })
  features.netClasses.push({
    id: 'fast',
    name: 'Fast',
    impedanceOhm: 60,
    tolerancePct: 12,
    kind: 'single',
    referenceLayerId: layerId,
    coupon: true,
    crosstalkLimitPct: 4,
    riseTimePs: 900,
  })
  features.components.push({
    id: 'part',
    name: 'Part',
    nearestBend,
    clearOfBends: true,
    transitionDistanceMm: 5,
    zoneId: design.construction.zones[0]?.id ?? null,
    side: 'top',
    overStiffener: true,
  })
  features.outline ??= {
    verticesMm: [
      [0, 0],
      [10, 0],
      [10, 5],
    ],
    rollingDirection: null,
  }
  for (const bend of design.bends)
    Object.assign(bend.flexTest, { cyclesPerMinute: 60, travelMm: 1, mandrelDiameterMm: 1 })
  for (const bend of design.bends) Object.assign(bend, { use: 'dynamic', requiredCycles: 1000, distanceToRigidMm: 5 })
  for (const zone of design.construction.zones) {
    Object.assign(zone, { statedThicknessUm: 100, connectorWindow: { minUm: 100, maxUm: 400 } })
    Object.assign(zone, { lengthMm: zone.lengthMm ?? 10, widthMm: zone.widthMm ?? 10 })
  }
  for (const conductor of features.conductors) {
    Object.assign(conductor, {
      currentAmp: 1,
      allowedRiseDegC: 10,
      allowedDropVolt: 1,
      impedanceOhm: 50,
      netClassId: 'fast',
    })
  }
  for (const { presence } of design.construction.zones) {
    for (const each of presence) each.hatch = { barMm: 0.2, pitchMm: 0.5, angleDeg: 45 }
  }
  features.copperToOutlineMm ??= 1
  Object.assign(design.brief, { quantityPerYear: 100, lifeSurvivalPct: 95, lifeWeibullSlope: 2 })
  return design
}

export const full = makeFullDesign()
export const results = evaluate(full)

function listNumbers(node: unknown, path: Path = []): Path[] {
  if (typeof node === 'number') return [path]
  if (typeof node !== 'object' || node === null) return []
  return Object.entries(node).flatMap(([key, inner]) =>
    listNumbers(inner, [...path, Array.isArray(node) ? Number(key) : key]),
  )
}

export function withNumber(path: Path, value: number): Design {
  const design = structuredClone(full)
  const holder = path
    .slice(0, -1)
    .reduce<unknown>((node, key) => (node as Record<string | number, unknown>)[key], design)
  ;(holder as Record<string | number, unknown>)[path.at(-1) ?? ''] = value
  return design
}

/** One path for each field: entries of a list are alike, but a list's kinds of layers are not. */
function listFields(): Path[] {
  const seen = new Set<string>()
  return listNumbers(full).filter((path) => {
    const [list, index] = [path.slice(0, 2).join('.'), path[2]]
    const kind = list === 'construction.layers' ? full.construction.layers[Number(index)]?.kind : ''
    const field = `${kind} ${path.map((key) => (typeof key === 'number' ? '*' : key)).join('.')}`
    if (path[0] === 'formatVersion' || seen.has(field)) return false
    seen.add(field)
    return true
  })
}

export const fieldName = (path: Path) => path.filter((key) => typeof key === 'string').join('.')
export const FIELDS = listFields()
