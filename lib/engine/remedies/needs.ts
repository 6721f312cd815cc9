import type { Design } from '../design'
import type { DecidedOutcome, Outcome, Verdict } from '../results'
import type { BendAssessment } from './assess'
import { findMovedImpedances } from './impedance'
import type { ForbiddenNeed } from './remedy'

/** Less than this share of a margin is rounding, not a change. */
const ROUNDING_FRACTION = 1e-9

/** Needs that the design states and a change would break, or push further from being met. */
export function findForbiddenNeeds(
  before: BendAssessment,
  after: BendAssessment,
  unavailableMaterialIds: readonly string[],
): ForbiddenNeed[] {
  return [
    ...findBrokenItems(before, after),
    ...findMovedImpedances(before, after),
    ...findMaterialNeeds(before, after, unavailableMaterialIds),
  ]
}

/** What the catalogue decides is compared by its own items, so that nothing is judged twice in two ways. */
function findBrokenItems(before: BendAssessment, after: BendAssessment): ForbiddenNeed[] {
  const broken: ForbiddenNeed[] = []
  const compare = (itemId: string, kind: ForbiddenNeed['kind']) => {
    pushWorse(before.check(itemId), after.check(itemId), kind, broken)
  }
  const conductorsMoved = after.assembly.conductors.some((result, at) => result !== before.assembly.conductors[at])
  if (conductorsMoved) {
    compare('conductor-current', 'current')
    compare('voltage-drop', 'voltage-drop')
  }
  // The cycles of several dynamic bends are one need of the part: what eases this bend must not use a layer up elsewhere.
  if (after.design.bends.filter(({ use }) => use === 'dynamic').length > 1) compare('damage-sum', 'damage-sum')
  if (
    after.design.bends !== before.design.bends ||
    after.design.construction.zones !== before.design.construction.zones
  ) {
    compare('bend-fit', 'zone-length')
  }
  const changedZones = after.assembly.zones.filter((zone, at) => zone !== before.assembly.zones[at])
  if (changedZones.some(({ kind }) => kind === 'finger')) compare('finger-thickness', 'connector-window')
  for (const zone of changedZones) {
    const earlier = before.assembly.zones.find(({ zoneId }) => zoneId === zone.zoneId)
    pushWorse(earlier?.encapsulation ?? [], zone.encapsulation, 'encapsulation', broken)
  }
  return broken
}

function pushWorse(
  before: readonly Outcome[],
  after: readonly Outcome[],
  kind: ForbiddenNeed['kind'],
  broken: ForbiddenNeed[],
): void {
  for (const outcome of after) {
    if (outcome.kind !== 'decided' || outcome.verdict !== 'fails') continue
    const earlier = before.find((each) => hasSamePlaces(each, outcome))
    if (earlier !== undefined && !isWorse(earlier, outcome)) continue
    // Of a zone and the bends in it, the zone has the need.
    const [zone] = outcome.places
    const isOfZone = kind === 'zone-length' && zone?.kind === 'zone'
    broken.push({
      kind,
      name: isOfZone ? zone.name : outcome.places.map(({ name }) => name).join(', '),
      because: outcome.summary,
    })
  }
}

function hasSamePlaces(a: Outcome, b: Outcome): boolean {
  return a.places.length === b.places.length && a.places.every((place, at) => place.id === b.places[at]?.id)
}

function isWorse(before: Outcome, after: DecidedOutcome): boolean {
  if (before.kind !== 'decided' || before.verdict !== 'fails') return true
  const slack = ROUNDING_FRACTION * Math.max(Math.abs(before.margin), Math.abs(after.margin))
  return after.margin < before.margin - slack
}

function findMaterialNeeds(
  before: BendAssessment,
  after: BendAssessment,
  unavailableMaterialIds: readonly string[],
): ForbiddenNeed[] {
  if (before.design.construction.layers === after.design.construction.layers) return []
  const needs: ForbiddenNeed[] = []
  const known = listMaterialIds(before.design)
  const { operatingMaxDegC } = after.design.brief
  for (const materialId of listMaterialIds(after.design)) {
    if (known.has(materialId)) continue
    const material = after.context.findMaterial(materialId)
    const name = material?.name ?? materialId
    if (unavailableMaterialIds.includes(materialId)) {
      needs.push({ kind: 'material', name, because: `${name} is not to be had from the fabricator.` })
    }
    const limitDegC = after.context.getLimit('temperatureMarginDegC').value
    const serviceDegC = material?.maxServiceDegC?.value ?? null
    if (operatingMaxDegC !== null && serviceDegC !== null && serviceDegC - operatingMaxDegC < limitDegC) {
      needs.push({
        kind: 'operating-temperature',
        name,
        because: `${name} serves up to ${serviceDegC} °C; the hottest operation is ${operatingMaxDegC} °C.`,
      })
    }
  }
  return needs
}

function listMaterialIds({ construction }: Design): Set<string> {
  const ids = new Set<string>()
  for (const layer of construction.layers) if (layer.kind !== 'unbonded-gap') ids.add(layer.materialId)
  return ids
}

const VERDICT_RANK: Readonly<Record<Verdict, number>> = {
  meets: 0,
  'not-applicable': 0,
  'thin-margin': 1,
  'not-computed': 2,
  'cannot-tell': 2,
  fails: 3,
}

/** Does `after` ask for more attention than `before`? */
export function isWorseVerdict(before: Verdict, after: Verdict): boolean {
  return VERDICT_RANK[after] > VERDICT_RANK[before]
}

export function rankVerdict(verdict: Verdict): number {
  return VERDICT_RANK[verdict]
}
