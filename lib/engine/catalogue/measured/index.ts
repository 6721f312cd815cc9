import type { EvaluationContext } from '../../context'
import type { Outcome } from '../../results'
import { type ArtworkInView, findArtworkInView } from './artwork-in-view'
import { angles, holesToBends, stacked, turns, widthChanges } from './in-bends'
import {
  coverEdgesInBends,
  holesToStiffeners,
  landsHeld,
  openingSizes,
  openingsToBends,
  stiffenerOverlaps,
  stiffenersToBends,
  teardrops,
  webs,
} from './on-covers'
import { rings, spaces, toOutline, transitionsOf, widthSteps, widths } from './on-layers'
import { planesInBends, planesInFolds } from './planes'

export { findArtworkInView } from './artwork-in-view'
export { etchTraps } from './etching'
export { interruptions } from './in-bends'
export { findDrawnHatch } from './planes'

interface Measurement {
  readonly check: (context: EvaluationContext, view: ArtworkInView) => readonly Outcome[]
  /** Where everything was measured, nobody has to state the same: what of the design is not stated is then no gap. */
  readonly isWhole: (view: ArtworkInView) => boolean
}

const inBends = ({ areBandsWhole }: ArtworkInView) => areBandsWhole
const onLayers = ({ areLayersWhole }: ArtworkInView) => areLayersWhole
/** Of a part of what the item asks: the rest stays to be stated. */
const inPart = () => false

/** Items whose figures the artwork shows too: what was measured there stands beside what was stated, and the worst of both counts. */
const MEASURED: Readonly<Record<string, Measurement>> = {
  'crossing-angle': { check: angles, isWhole: inBends },
  'direction-change-in-bend': { check: turns, isWhole: inBends },
  'width-change-in-bend': { check: widthChanges, isWhole: inBends },
  'layer-stagger': { check: stacked, isWhole: inPart },
  'plane-in-bend': { check: planesInBends, isWhole: inPart },
  'plane-in-fold': { check: planesInFolds, isWhole: inPart },
  'hole-to-bend': { check: holesToBends, isWhole: inPart },
  'conductor-width': { check: widths, isWhole: onLayers },
  'conductor-space': { check: spaces, isWhole: inPart },
  'annular-ring': { check: rings, isWhole: inPart },
  'width-step': { check: widthSteps, isWhole: inPart },
  'transition-strip': { check: transitionsOf('below-class-three'), isWhole: inPart },
  'transition-strip-class-three': { check: transitionsOf('class-three'), isWhole: inPart },
  'coverlay-opening': { check: openingSizes, isWhole: inPart },
  'coverlay-web': { check: webs, isWhole: inPart },
  'opening-to-bend': { check: openingsToBends, isWhole: inPart },
  'coverlay-edge-in-bend': { check: coverEdgesInBends, isWhole: inPart },
  'straight-film': { check: stiffenersToBends, isWhole: inPart },
  'stiffener-overlap': { check: stiffenerOverlaps, isWhole: inPart },
  'hole-to-stiffener-edge': { check: holesToStiffeners, isWhole: inPart },
  'land-hold': { check: landsHeld, isWhole: inPart },
  teardrop: { check: teardrops, isWhole: inPart },
  'copper-to-outline': { check: toOutline, isWhole: inPart },
}

/** What artwork shows of an item; empty where nothing was measured. */
export function measureInArtwork(
  itemId: string,
  context: EvaluationContext,
): { readonly outcomes: readonly Outcome[]; readonly isWhole: boolean } {
  const measurement = MEASURED[itemId]
  const view = measurement === undefined ? null : findArtworkInView(context)
  if (measurement === undefined || view === null) return { outcomes: [], isWhole: false }
  const outcomes = measurement.check(context, view)
  return { outcomes, isWhole: outcomes.length > 0 && measurement.isWhole(view) }
}
