/** What measuring a plan needs of the design round it: the plan itself knows neither sections nor features. */
export interface PlanFacts {
  /** Width of the band that each bend covers: angle times the radius of its neutral axis, of the longest leaf. Null where its section is not known. */
  readonly bandWidthsMm: ReadonlyMap<string, number | null>
  readonly zoneOfBend: ReadonlyMap<string, string>
  /** Zones that lie flat: rigid, stiffened, fingers. */
  readonly flatZoneIds: ReadonlySet<string>
  readonly drillsMm: ReadonlyMap<string, number | null>
  readonly conductors: ReadonlyMap<string, { readonly layerId: string; readonly widthMm: number | null }>
  /** Conductor layers from the top face down. */
  readonly conductorLayerIds: readonly string[]
}
