import { type SelectedStep, selectSteps } from './rules'
import type { RatedStep, Rates } from './steps'
import { findRegistrationCost } from './steps'
import type { ConstructionTraits, RegistrationDemand } from './traits'

/** A panel that parts are laid on, and how many. */
export interface PricedPanel {
  readonly formatId: string
  readonly formatName: string
  readonly areaM2: number
  readonly partsPerPanel: number
}

export interface StepCost extends SelectedStep {
  readonly step: RatedStep
  /** Index units for each good part, set-up included. */
  readonly indexPerGoodPart: number
  /** Of the whole; the shares of all steps add up to 1. */
  readonly shareFraction: number
}

export interface YieldStep {
  readonly id: string
  readonly name: string
  readonly yieldFraction: number
  /** Product of this one and all before it. */
  readonly runningFraction: number
}

export interface Cost {
  readonly panel: PricedPanel
  /** Good parts ordered; null is an endless run, in which set-up no longer counts. */
  readonly quantity: number | null
  readonly panelCount: number | null
  readonly indexPerGoodPart: number
  readonly steps: readonly StepCost[]
  readonly yieldChain: readonly YieldStep[]
  readonly yieldFraction: number
  readonly registration: RegistrationDemand
  /** Are rates of the delivered table among those that count here? */
  readonly usesIllustrativeRates: boolean
}

/**
 * Cost of a panel over the good parts that it gives.
 *
 * @throws RangeError for a panel that holds no part, or a yield outside 0 to 1
 * Source   exact arithmetic: cost / (count x yield)
 */
export function getPanelCostPerGoodPart(panelCost: number, partsPerPanel: number, yieldFraction: number): number {
  if (!(partsPerPanel > 0)) throw new RangeError(`partsPerPanel must be above 0; found ${partsPerPanel}`)
  if (!(yieldFraction > 0 && yieldFraction <= 1)) {
    throw new RangeError(`yieldFraction must be above 0 and at most 1; found ${yieldFraction}`)
  }
  return panelCost / (partsPerPanel * yieldFraction)
}

/**
 * Index per good part of a construction on one panel format, with each step's share. Every panel goes through every step,
 * and losses show at the end: all work of a panel is paid by its good parts. Set-up is paid once by the order.
 *
 * @param quantity  good parts ordered; whole panels are started for them. Null counts no set-up and no rest of a panel
 * @throws RangeError for a panel that holds no part
 */
export function priceConstruction(
  traits: ConstructionTraits,
  rates: Rates,
  panel: PricedPanel,
  quantity: number | null,
): Cost {
  const selected = selectSteps(traits).map((each) => ({ ...each, step: findStep(rates, each.stepId) }))
  const yieldChain = chainYields(selected, rates, traits.registration)
  const yieldFraction = yieldChain.at(-1)?.runningFraction ?? 1
  const goodPerPanel = panel.partsPerPanel * yieldFraction
  const panelCount = quantity === null ? null : Math.ceil(roundOff(quantity / goodPerPanel))
  const perPart = selected.map(({ step, count }) => {
    const onPanel = step.rateIndex * count * getWorkPerUnit(step, panel)
    return panelCount === null || quantity === null
      ? getPanelCostPerGoodPart(onPanel, panel.partsPerPanel, yieldFraction)
      : (onPanel * panelCount + step.setUpIndex * getToolCount(step, count)) / quantity
  })
  const indexPerGoodPart = perPart.reduce((sum, index) => sum + index, 0)
  return {
    panel,
    quantity,
    panelCount,
    indexPerGoodPart,
    steps: selected.map((each, at) => ({
      ...each,
      indexPerGoodPart: perPart[at] ?? 0,
      shareFraction: indexPerGoodPart === 0 ? 0 : (perPart[at] ?? 0) / indexPerGoodPart,
    })),
    yieldChain,
    yieldFraction,
    registration: traits.registration,
    usesIllustrativeRates:
      selected.some(({ step }) => step.isIllustrative) ||
      findRegistrationCost(rates, traits.registration).isIllustrative,
  }
}

/** Cheapest of several panels; null where no panel holds a part. The first of equal ones. */
export function priceOnBestPanel(
  traits: ConstructionTraits,
  rates: Rates,
  panels: readonly PricedPanel[],
  quantity: number | null,
): Cost | null {
  let best: Cost | null = null
  for (const panel of panels) {
    if (panel.partsPerPanel <= 0) continue
    const cost = priceConstruction(traits, rates, panel, quantity)
    if (best === null || cost.indexPerGoodPart < best.indexPerGoodPart) best = cost
  }
  return best
}

function findStep(rates: Rates, stepId: string): RatedStep {
  const step = rates.steps.find(({ id }) => id === stepId)
  if (step === undefined) throw new RangeError(`no process step "${stepId}" in the table`)
  return step
}

function getWorkPerUnit({ unit }: RatedStep, panel: PricedPanel): number {
  switch (unit) {
    case 'per-square-metre-of-layer':
      return panel.areaM2
    case 'per-layer':
    case 'per-lamination':
    case 'per-cycle':
    case 'per-panel':
      return 1
    case 'per-opening':
    case 'per-part':
      return panel.partsPerPanel
  }
}

/** Tools are made for each layer, press cycle or other cycle; a program for openings or parts is made once. */
function getToolCount({ unit }: RatedStep, count: number): number {
  return unit === 'per-layer' || unit === 'per-lamination' || unit === 'per-cycle' ? count : 1
}

function chainYields(
  selected: readonly (SelectedStep & { readonly step: RatedStep })[],
  rates: Rates,
  demand: RegistrationDemand,
): YieldStep[] {
  const links: Omit<YieldStep, 'runningFraction'>[] = selected.flatMap(({ step, count }) =>
    step.yieldFraction === null
      ? []
      : [{ id: step.id, name: step.name, yieldFraction: step.yieldFraction ** getToolCount(step, count) }],
  )
  links.push({
    id: 'registration',
    name: `Registration, ${demand}`,
    yieldFraction: findRegistrationCost(rates, demand).yieldFraction,
  })
  let running = 1
  return links.map((link) => {
    running *= link.yieldFraction
    return { ...link, runningFraction: running }
  })
}

/** 60.00000000000001 panels are 60: a rounding error must not start one more. */
function roundOff(value: number): number {
  const whole = Math.round(value)
  return Math.abs(value - whole) < 1e-9 * Math.max(1, whole) ? whole : value
}
