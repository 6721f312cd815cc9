import { type Assumption, type Design, listAssumptions } from '../design'
import { groupBy } from '../numerics'
import type { DecidedOutcome, Outcome, Place } from '../results'

/**
 * Says with each figure which values it rests on that nobody has confirmed: those of the place itself, and of the layers in
 * its zone. A design that assumes nothing is handed back as it came.
 */
export function withAssumptions(outcomes: readonly Outcome[], design: Design): readonly Outcome[] {
  if (design.assumed.length === 0) return outcomes
  const assumptions = findAssumptions(design)
  return outcomes.map((outcome) => {
    if (outcome.kind !== 'decided') return outcome
    const resting = assumptions.filter((assumption) =>
      outcome.places.some((place) => doesTouch(assumption, place, design)),
    )
    return resting.length === 0 ? outcome : withCaution(outcome, resting)
  })
}

const FOUND = new WeakMap<Design, readonly Assumption[]>()

/** Once for a design: every item asks. */
function findAssumptions(design: Design): readonly Assumption[] {
  const known = FOUND.get(design) ?? listAssumptions(design)
  FOUND.set(design, known)
  return known
}

function doesTouch({ list, id }: Assumption, place: Place, { construction, bends }: Design): boolean {
  const zoneId =
    place.kind === 'zone'
      ? place.id
      : place.kind === 'bend'
        ? bends.find((bend) => bend.id === place.id)?.zoneId
        : undefined
  switch (list) {
    case 'bends':
      return place.kind === 'bend' && place.id === id
    case 'conductors':
      return place.kind === 'conductor' && place.id === id
    case 'pads':
      return place.kind === 'pad' && place.id === id
    case 'widthSteps':
      return place.kind === 'width-step' && place.id === id
    case 'zones':
      return zoneId === id
    case 'layers':
      return (
        (place.kind === 'layer' && place.id === id) ||
        construction.zones.some((zone) => zone.id === zoneId && zone.presence.some(({ layerId }) => layerId === id))
      )
  }
}

function withCaution(outcome: DecidedOutcome, resting: readonly Assumption[]): DecidedOutcome {
  const said = [...groupBy(resting, ({ name }) => name)]
    .map(([name, own]) => `${own.map(({ label }) => label).join(', ')} of ${name}`)
    .join('; ')
  return { ...outcome, cautions: [...outcome.cautions, `Rests on values that are assumed and not confirmed: ${said}.`] }
}
