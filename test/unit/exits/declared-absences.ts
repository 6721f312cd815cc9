/** Fields that an exit leaves out on purpose, with the reason. A pattern that ends in `*` covers what lies below it. */
export type Absences = Readonly<Record<string, string>>

const CALCULATED_WITH = 'The review calculates with it; nothing is built from it.'
const FOR_THE_REVIEW = 'A matter between team and review; what the shop has to do about it stands in a term of its own.'
const IN_ARTWORK = 'The artwork shows it.'
const SEEN = 'An observation of the review on layout and drawings, no instruction to the shop.'

export const ABSENT: Readonly<Record<string, Absences>> = {
  drawing: {
    'brief.partNumber': 'The title block states it (lib/package/drawing.ts).',
    'brief.revisionLabel': 'The title block states the label of the revision itself.',
    'brief.quantityPerYear': 'The order states the quantity.',
    'brief.purpose': FOR_THE_REVIEW,
    'brief.flatAtDegC': CALCULATED_WITH,
    'brief.cycleMinDegC': CALCULATED_WITH,
    'brief.cycleMaxDegC': CALCULATED_WITH,
    'brief.temperatureCycles': CALCULATED_WITH,
    'brief.holePlatingQuality': CALCULATED_WITH,
    'brief.manufacturingReviewDate': 'Dates are of the project.',
    'brief.layoutFreezeDate': 'Dates are of the project.',
    'brief.needDate': 'The order states the date.',
    'brief.lifeSurvivalPct': CALCULATED_WITH,
    'brief.lifeWeibullSlope': CALCULATED_WITH,
    'brief.ratioTableKey': CALCULATED_WITH,
    'brief.acceptance.hasSurfaceMountParts': 'Decides the limit of flatness, which stands as a note.',
    'brief.acceptance.flameClassHeld': 'What a maker holds; the drawing states what is asked for.',
    'brief.agreements.prototypeTool': 'Agreed with the fabricator for each order.',
    'brief.agreements.seriesTool': 'Agreed with the fabricator for each order.',
    'brief.agreements.limitsHoldForSeries': 'Agreed with the fabricator for each order.',
    'brief.agreements.hasPredecessor': FOR_THE_REVIEW,
    'brief.agreements.lessonsReviewed': FOR_THE_REVIEW,
    'brief.exposure.*': FOR_THE_REVIEW,
    'brief.outgassing.*': FOR_THE_REVIEW,
    'materials.*': 'The drawing calls a material out by its specification sheet, never by its constants.',
    'construction.layers.*.role': IN_ARTWORK,
    'construction.layers.*.coverageFraction': IN_ARTWORK,
    'construction.layers.*.plating.materialId': CALCULATED_WITH,
    'construction.layers.*.processingLossUm': CALCULATED_WITH,
    'construction.zones.*.presence.*.coverageFraction': IN_ARTWORK,
    'construction.zones.*.throughExpansionPpmPerC': CALCULATED_WITH,
    'construction.zones.*.throughModulusGpa': CALCULATED_WITH,
    'construction.zones.*.glassTransitionDegC': CALCULATED_WITH,
    'features.conductors.*.lengthMm': IN_ARTWORK,
    'features.conductors.*.returnAsLong': CALCULATED_WITH,
    'features.conductors.*.carriesPower': CALCULATED_WITH,
    'features.conductors.*.isCovered': IN_ARTWORK,
    'features.conductors.*.frequencyMhz': CALCULATED_WITH,
    'features.conductors.*.impedance.referenceUnbroken': SEEN,
    'features.conductors.*.crossings.*': IN_ARTWORK,
    'features.outlineCorners.*.bordersFlex': 'The plan shows it.',
    'features.outlineCorners.*.isPulled': CALCULATED_WITH,
    'features.pads.*.nearestBend.*': IN_ARTWORK,
    'features.pads.*.clearOfBends': IN_ARTWORK,
    'features.widthSteps.*': IN_ARTWORK,
    'features.stiffeners.*.onDrawing': SEEN,
    'features.components.*': 'The assembly drawing shows components.',
    'features.routing.cornersCurved': SEEN,
    'features.routing.evenlySpacedInBends': SEEN,
    'features.routing.staggeredOnAdjacentLayers': SEEN,
    'features.routing.cutOutsConsideredAtTightBends': SEEN,
    'features.routing.layersNamedOnDrawing': SEEN,
    'features.routing.bendsCalledOutOnDrawing': SEEN,
    'features.routing.coverlayDetailOnDrawing': SEEN,
  },
  form: {
    'features.routing.cutOutsConsideredAtTightBends': 'Older documents state it; nothing rests on it.',
    'brief.revisionLabel': 'The label is given where a revision is made.',
    'materials.*': 'Materials of a design’s own come with its file.',
    'brief.outgassing.*.materialId': 'The form has a line for each material of the construction.',
    'construction.layers.*.plating.materialId': 'Plated copper of the library, unless a file says otherwise.',
    'features.stiffeners.*.layerId': 'The form has a line for each stiffener layer of the construction.',
    'features.outline.verticesMm': 'The outline is typed as one list of corners.',
  },
}

export function findAbsence(exit: string, pattern: string): string | null {
  for (const [declared, reason] of Object.entries(ABSENT[exit] ?? {})) {
    if (declared === pattern || (declared.endsWith('.*') && pattern.startsWith(declared.slice(0, -1)))) return reason
  }
  return null
}

/** Declared as absent by a line that covers no field that is absent: the line is out of date. */
export function listIdle(exit: string, absent: readonly string[]): string[] {
  return Object.keys(ABSENT[exit] ?? {}).filter(
    (declared) =>
      !absent.some((pattern) =>
        declared.endsWith('.*') ? pattern.startsWith(declared.slice(0, -1)) : pattern === declared,
      ),
  )
}
