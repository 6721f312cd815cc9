import { CONNECTOR_DIMENSIONS } from '../../design'
import type { RequirementRange } from './range'

/**
 * Figures that describe the part, and that no item of major severity or more looks at closely: what is out of all proportion in them would pass. A
 * slip of the unit (mm for µm) lies well outside. Common practice and our choice, no published source.
 */

/** A layer that a bath has plated. */
const isPlated = ({ plating }: Readonly<Record<string, unknown>>) =>
  typeof plating === 'object' && plating !== null && (plating as { process?: unknown }).process !== 'none'

const LAYERS: readonly RequirementRange[] = [
  { pattern: 'construction.layers.*.plating.thicknessUm', low: 0.5, high: 150, nameSteps: 2, isFor: isPlated },
  // No bath is held closer than a tenth of a micrometre.
  { pattern: 'construction.layers.*.plating.toleranceUm', low: 0.1, high: 75, nameSteps: 2, isFor: isPlated },
  { pattern: 'construction.zones.*.contactFinish.thicknessUm', low: 0, high: 40, nameSteps: 2 },
  { pattern: 'construction.zones.*.contactFinish.toleranceUm', low: 0.01, high: 20, nameSteps: 2 },
]

const BENDS: readonly RequirementRange[] = [
  // Formed film springs back by more than this from one part to the next.
  { pattern: 'bends.*.radiusToleranceMm', low: 0.01, high: 100 },
]

const FEATURES: readonly RequirementRange[] = [
  { pattern: 'features.widthSteps.*.wideMm', low: 0.05, high: 100 },
  { pattern: 'features.widthSteps.*.narrowMm', low: 0.02, high: 50 },
  { pattern: 'features.coverlayOpenings.*.webMm', low: 0.05, high: 500 },
  { pattern: 'features.pads.*.anchorCount', low: 0, high: 16 },
  { pattern: 'features.registrations.*.heldMm', low: 0.005, high: 1.5 },
  { pattern: 'features.rigidEdges.beadWidthMm', low: 0.1, high: 10 },
  { pattern: 'features.rigidEdges.beadHeightMm', low: 0.05, high: 5 },
  { pattern: 'features.rigidEdges.prepregSetBackMm', low: 0, high: 5 },
  { pattern: 'features.connectors.*.firstBendMm', low: 0, high: 1000 },
  ...CONNECTOR_DIMENSIONS.flatMap((dimension): RequirementRange[] => [
    { pattern: `features.connectors.*.${dimension}.toleranceMm`, low: 0.005, high: 2, nameSteps: 2 },
  ]),
  { pattern: 'features.connectors.*.stiffenerLength.partMm', low: 0.5, high: 200, nameSteps: 2 },
]

const BRIEF: readonly RequirementRange[] = [
  { pattern: 'brief.marking.letterHeightMm', low: 0.3, high: 20 },
  { pattern: 'brief.marking.lineWidthMm', low: 0.03, high: 3 },
  { pattern: 'brief.marking.toPadMm', low: 0.02, high: 100 },
  // Gold by immersion is some hundredths of a micrometre thick, hot-levelled solder up to some 20.
  { pattern: 'brief.finishTerms.topMetalUm', low: 0.01, high: 25 },
  { pattern: 'brief.finishTerms.nickelUm', low: 0.3, high: 15 },
  { pattern: 'brief.finishTerms.palladiumUm', low: 0.01, high: 1.5 },
  // Polymers lose at least this much to vacuum; less was not measured.
  { pattern: 'brief.outgassing.*.totalLossPct', low: 0.01, high: 50 },
]

export const FIGURE_RANGES: readonly RequirementRange[] = [...LAYERS, ...BENDS, ...FEATURES, ...BRIEF]
