import type { MissingInput, Outcome, QuantityRange } from './outcome'

/** Thickness of one layer in one zone, finished. */
export interface ZoneLayerResult {
  readonly layerId: string
  readonly name: string
  readonly kind: string
  readonly materialId: string | null
  /** Depth of the layer's upper face below the zone's top face. */
  readonly topDepthUm: number
  readonly nominalUm: number
  readonly minUm: number
  readonly maxUm: number
  /** As entered: foil or sheet as bought. An adhesive that flowed is thinner in the finished zone. */
  readonly asBoughtUm: number
  /** Foil as bought, plating added here, processing loss; conductors only. */
  readonly copper: { readonly foilUm: number; readonly platingUm: number; readonly lossUm: number } | null
  readonly coverageFraction: number | null
  /** Share of the zone's thickness variance that this layer brings. */
  readonly varianceShareFraction: number
}

/** A connector end over its contacts: the zone with what lies on pads alone, plating and finish. */
export interface ContactResult {
  readonly thicknessUm: number
  readonly worstCaseUm: QuantityRange
  readonly platingUm: number
  readonly finishUm: number
  /** What nobody said: whether the contacts are plated, how thick their finish is. Counted as nothing above. */
  readonly missing: readonly MissingInput[]
}

/** How a zone that lies free curls, being flat at one temperature and at another one in service. */
export interface ThermalCurlResult {
  /** What is not known; nothing is computed then. */
  readonly missing: readonly MissingInput[]
  /** At the service temperature farthest from the flat one. */
  readonly atDegC: number | null
  /** Of the leaf that curls most; positive where the bottom face comes to the convex side. */
  readonly curvaturePerMm: number | null
  readonly curvatureRangePerMm: QuantityRange | null
  /** Rise of the arc over the zone's longer side, in per cent of it. */
  readonly risePct: number | null
  /** Over tolerances and the spread of every constant. */
  readonly riseRangePct: QuantityRange | null
}

export interface ZoneResult {
  readonly zoneId: string
  readonly name: string
  readonly kind: string
  readonly layers: readonly ZoneLayerResult[]
  readonly thicknessUm: number
  readonly worstCaseUm: QuantityRange
  readonly rootSumSquareUm: QuantityRange
  /** Connector ends only: thickness where the contacts are, which the connector takes. */
  readonly contact: ContactResult | null
  readonly encapsulation: readonly Outcome[]
  /** Curl of the flat part over its temperatures; an earlier engine did not report it. */
  readonly thermalCurl: ThermalCurlResult | null
  /** What a defined default was used for, in words. */
  readonly defaultsUsed: readonly string[]
}
