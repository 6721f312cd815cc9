import type { Design } from '@/lib/engine'
import {
  type ConstructionTraits,
  type Cost,
  describeConstruction,
  findRegistrationCost,
  makeRates,
  type PricedPanel,
  type ProcessRatesContent,
  priceOnBestPanel,
  type Rates,
  type RegistrationDemand,
} from '../cost'
import { type NestedPart, type Nesting, type PanelFormat, type PanelFormatsContent, readNestedPart } from '../panel'
import type { Nester } from './nest-cache'

/** What a fabricator runs and charges; null is a sheet that they do not keep. */
export interface FabricatorBasis {
  readonly formats: PanelFormatsContent | null
  readonly rates: ProcessRatesContent | null
}

export interface NestedFormat {
  readonly format: PanelFormat
  readonly nesting: Nesting
  /** What registration adds to the format's margins and spacing. */
  readonly extraMarginMm: number
  readonly extraSpacingMm: number
}

/** Parts on each panel format for one demand on registration. */
export function nestOnFormats(
  part: NestedPart,
  formats: readonly PanelFormat[],
  rates: Rates,
  demand: RegistrationDemand,
  nest: Nester,
): NestedFormat[] {
  const { extraMarginMm, extraSpacingMm } = findRegistrationCost(rates, demand)
  const extra = { extraMarginMm, extraSpacingMm }
  return formats.map((format) => ({ format, nesting: nest(part, format, extra), ...extra }))
}

export type Estimate =
  | {
      readonly ok: true
      readonly traits: ConstructionTraits
      readonly rates: Rates
      readonly part: NestedPart
      /** What was taken for granted of the part; empty for an outline. */
      readonly partNote: string
      readonly nested: readonly NestedFormat[]
      /** Null where no panel holds the part. */
      readonly cost: Cost | null
    }
  | {
      readonly ok: false
      readonly code: 'no-formats' | 'no-part'
      readonly missingPath: readonly (string | number)[]
      readonly reason: string
    }

/**
 * Parts per panel and cost of a design at one fabricator: nested for the registration that the construction demands, on
 * the panel where a good part costs least.
 *
 * @param quantity  good parts ordered; null counts no set-up
 */
export function estimate(
  design: Design,
  basis: FabricatorBasis,
  nest: Nester,
  quantity: number | null = design.brief.quantityPerYear,
): Estimate {
  const formats = basis.formats?.formats ?? []
  if (formats.length === 0) {
    return {
      ok: false,
      code: 'no-formats',
      missingPath: ['facts', 'panelFormats'],
      reason: 'The fabricator keeps no panel formats.',
    }
  }
  const reading = readNestedPart(design)
  if (!reading.ok) return { ok: false, code: 'no-part', missingPath: reading.missingPath, reason: reading.reason }
  const rates = makeRates(basis.rates)
  const traits = describeConstruction(design)
  const nested = nestOnFormats(reading.part, formats, rates, traits.registration, nest)
  const cost = priceOnBestPanel(traits, rates, toPricedPanels(nested), quantity)
  return { ok: true, traits, rates, part: reading.part, partNote: reading.note, nested, cost }
}

export function toPricedPanels(nested: readonly NestedFormat[]): PricedPanel[] {
  return nested.map(({ format, nesting }) => ({
    formatId: format.id,
    formatName: format.name,
    areaM2: (format.widthMm * format.heightMm) / 1e6,
    partsPerPanel: nesting.count,
  }))
}

/** The nesting on which the cost rests. */
export function findPricedNesting(result: Estimate): NestedFormat | null {
  if (!result.ok || result.cost === null) return null
  const { formatId } = result.cost.panel
  return result.nested.find(({ format }) => format.id === formatId) ?? null
}

/** Index over quantity: set-up fades, and whole panels are started. */
export function priceOverQuantity(
  result: Extract<Estimate, { ok: true }>,
  quantities: readonly number[],
): { readonly quantity: number; readonly indexPerGoodPart: number }[] {
  const panels = toPricedPanels(result.nested)
  return quantities.flatMap((quantity) => {
    const cost = priceOnBestPanel(result.traits, result.rates, panels, quantity)
    return cost === null ? [] : [{ quantity, indexPerGoodPart: cost.indexPerGoodPart }]
  })
}
