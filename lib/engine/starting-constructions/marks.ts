import { type Design, markAssumed } from '../design'

/**
 * The design with marks on what a construction to begin from says of the part. Which layers there are, how thick they are and in which order
 * is what was chosen; the rest is a proposal, and marked as such until somebody confirms it. What it leaves open needs no mark.
 */
export function markProposed(design: Design): Design {
  const { layers, zones } = design.construction
  const proposed = [
    ...layers.flatMap((layer) => (layer.kind === 'conductor' ? markStated('layers', layer, ['coverageFraction']) : [])),
    ...zones.flatMap((zone) => markStated('zones', zone, ['lengthMm', 'widthMm'])),
    ...design.bends.flatMap((bend) =>
      markStated('bends', bend, [
        'use',
        'insideRadiusMm',
        'radiusToleranceMm',
        'angleDeg',
        'insideFace',
        'axisLengthMm',
        'motion',
      ]),
    ),
    ...design.features.conductors.flatMap((conductor) =>
      markStated('conductors', conductor, ['widthMm', 'spaceMm', 'lengthMm', 'crossings']),
    ),
  ]
  return { ...design, assumed: [...new Set([...design.assumed, ...proposed])] }
}

function markStated<L extends Parameters<typeof markAssumed>[0]>(
  list: L,
  entry: { readonly id: string },
  fields: Parameters<typeof markAssumed<L>>[2],
): string[] {
  const values: Readonly<Record<string, unknown>> = { ...entry }
  return markAssumed(
    list,
    entry.id,
    fields.filter((field) => values[field] !== null),
  )
}
