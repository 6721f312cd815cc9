import type { LimitKey } from '@/lib/engine/catalogue'

/**
 * What public guides and trade articles print for a limit, collected by a reviewer of the field in 2026; guides are named by year only, as in the
 * registry of sources. `delivered` is what that reviewer would begin with.
 */
export interface PublishedRange {
  readonly key: LimitKey
  readonly delivered: number
  /** Lowest and highest figure found; null where none was found. */
  readonly printed: readonly [lowest: number, highest: number] | null
  /** Where the delivered figure comes from: a source of the registry. */
  readonly source: string
  /** What the note says beside it, so that a reader sees how far guides differ. */
  readonly says: readonly string[]
  /** What the source is on record with. */
  readonly sourceSays?: readonly string[]
}

export const PUBLISHED_RANGES: readonly PublishedRange[] = [
  {
    key: 'annularRingMm',
    delivered: 0.125,
    printed: [0.075, 0.25],
    source: 'ownChoice',
    says: ['0.075 to 0.12 mm (fabricators)', '0.075 to 0.13 mm (guide of 2017)', '0.20 mm (guide of 2012)', '0.25 mm'],
  },
  {
    // Holes and components alike.
    key: 'transitionStripMm',
    delivered: 1.5,
    printed: [0.5, 3.18],
    source: 'ipc6013Transition',
    says: ['0.5 to 1.0', '0.76', '0.8', '1.27', '1.5', '1.9 mm', '3.18 mm', 'not read'],
    sourceSays: ['3 mm', '1.5 mm'],
  },
  {
    // To the edge of a rigid zone and of a stiffener alike. The guide of 2012 gives the length of the flex area, no distance of a bend.
    key: 'bendToRigidMm',
    delivered: 2.5,
    printed: [1, 5],
    source: 'ownChoice',
    says: [
      '1.0 mm (guide of 2017)',
      '1.5 mm (guide without a year)',
      '2 mm (guide of 2023)',
      '5 mm (magazine of 2021)',
    ],
  },
  {
    key: 'contactToBendMm',
    delivered: 2,
    printed: [2, 2],
    source: 'guideRigidFlex2023',
    says: ['2 mm'],
    sourceSays: ['2 mm'],
  },
  {
    key: 'flexLengthMm',
    delivered: 5,
    printed: [5, 5],
    source: 'guideRigidFlex2012',
    says: ['ordinary'],
    sourceSays: ['5 mm'],
  },
  {
    key: 'flexLengthLeastMm',
    delivered: 2.5,
    printed: [2, 2.5],
    source: 'guideRigidFlex2012',
    says: ['guide of 2017 allows 2.0 mm'],
    sourceSays: ['2.5 mm'],
  },
  {
    key: 'holeToBendMm',
    delivered: 1.27,
    printed: [0.5, 1.27],
    source: 'guideCircuitConstruction',
    says: ['0.050 in', 'guide of 2026 gives 0.5 mm', 'attributes it to IPC-2223'],
    sourceSays: ['1.27 mm'],
  },
  {
    key: 'coverlayCaptureMm',
    delivered: 0.15,
    printed: [0.1, 0.3],
    source: 'ownChoice',
    says: ['0.10 to 0.125 mm', 'shifts by 0.15 to 0.30 mm'],
  },
  { key: 'stiffenerOverlapMm', delivered: 1, printed: [0.5, 1.27], source: 'ownChoice', says: ['0.5 to 1.27 mm'] },
  {
    key: 'cornerInsideRadiusMm',
    delivered: 1,
    printed: [0.2, 1.5],
    source: 'guideRigidFlex2012',
    says: ['0.5 mm (routing)', '0.75 mm', '30 mil, common practice', '1.0 mm (guide of 2012)', '1.5 mm', '0.2 mm'],
    sourceSays: ['1.0 mm'],
  },
  {
    key: 'cornerElsewhereRadiusMm',
    delivered: 0.5,
    printed: [0.2, 1.5],
    source: 'ownChoice',
    says: ['routing', '0.2 mm'],
  },
  {
    key: 'copperToOutlineMm',
    delivered: 0.5,
    printed: [0.2, 1.27],
    source: 'guideRigidFlex2012',
    says: ['0.30 mm at the least and 0.50 mm (guide of 2012)', '1.27 mm'],
    sourceSays: ['0.50 mm'],
  },
  {
    key: 'copperToFineOutlineMm',
    delivered: 0.35,
    printed: [0.2, 1.27],
    source: 'ownChoice',
    says: ['0.20 to 0.25 mm', '0.35 mm (guide of 2017)'],
  },
  // On the thinnest copper; the steps by finished copper are tested on their own.
  {
    key: 'conductorWidthMm',
    delivered: 0.075,
    printed: [0.05, 0.2],
    source: 'ownChoice',
    says: ['0.05 to 0.076 mm (shops)', '0.1 to 0.2 mm', '0.125 and 0.15 mm (2012)'],
  },
  {
    key: 'conductorSpaceMm',
    delivered: 0.075,
    printed: [0.05, 0.2],
    source: 'ownChoice',
    says: ['0.05 to 0.076 mm (shops)', '0.1 to 0.2 mm', '0.125 and 0.15 mm (2012)'],
  },
  {
    key: 'coverlayOpeningLaserMm',
    delivered: 0.2,
    printed: [0.2, 0.2],
    source: 'guideCoverlayOpenings',
    says: ['0.2 mm'],
    sourceSays: ['0.2 mm'],
  },
  {
    key: 'coverlayOpeningDrillMm',
    delivered: 0.5,
    printed: [0.5, 0.8],
    source: 'guideCoverlayOpenings',
    says: ['0.5 mm'],
    sourceSays: ['0.5 mm'],
  },
  {
    key: 'coverlayOpeningPunchMm',
    delivered: 0.8,
    printed: [0.5, 0.8],
    source: 'guideCoverlayOpenings',
    says: ['0.8 mm'],
    sourceSays: ['0.8 mm'],
  },
  {
    key: 'coverlayWebLaserMm',
    delivered: 0.15,
    printed: [0.2, 0.3],
    source: 'ownChoice',
    says: ['capability table gives 0.2 mm'],
  },
  { key: 'coverlayWebDrillMm', delivered: 0.25, printed: [0.2, 0.3], source: 'ownChoice', says: ['0.2 to 0.3 mm'] },
  { key: 'coverlayWebPunchMm', delivered: 0.3, printed: [0.2, 0.3], source: 'ownChoice', says: ['0.2 to 0.3 mm'] },
  // The larger of the next two counts.
  {
    key: 'thicknessTolerancePct',
    delivered: 10,
    printed: [10, 33],
    source: 'commonPractice',
    says: ['10 to 17 %', '25 to 33 %'],
  },
  { key: 'thicknessToleranceUm', delivered: 30, printed: [30, 50], source: 'ownChoice', says: ['30 um', '50 um'] },
  // Half the last digit that was typed goes before it.
  {
    key: 'statedThicknessDifferencePct',
    delivered: 5,
    printed: null,
    source: 'ownChoice',
    says: ['round to 5 or 10 um'],
  },
  {
    key: 'temperatureMarginDegC',
    delivered: 10,
    printed: null,
    source: 'ownChoice',
    says: ['none was found published'],
  },
  {
    key: 'slitEndReliefDiameterMm',
    delivered: 1.5,
    printed: null,
    source: 'ownChoice',
    says: ['no published figure was found'],
  },
  // The sums are those at failure, from 0.7 to 2.2: nobody may plan with more than 1.
  {
    key: 'damageSumFraction',
    delivered: 0.5,
    printed: [0.7, 1],
    source: 'ownChoice',
    says: ['0.7 to 2.2 at failure', '60.4.8'],
  },
  {
    key: 'flexibleMaskRadiusMm',
    delivered: 10,
    printed: [10, 10],
    source: 'ratioTradeArticle2019',
    says: ['0.4 in', 'none in moving bends'],
    sourceSays: ['0.4 in'],
  },
  {
    key: 'holeAspectRatio',
    delivered: 8,
    printed: [8, 10],
    source: 'commonPractice',
    says: ['8 : 1', '10 : 1 as a stretch'],
  },
  { key: 'stackAsymmetryFraction', delivered: 0.1, printed: null, source: 'ownChoice', says: ['Our choice'] },
  {
    key: 'immersionGoldMatingsCount',
    delivered: 30,
    printed: [10, 30],
    source: 'commonPractice',
    says: ['2026', '10 to 30 matings'],
  },
  { key: 'handFormedRadiusRatio', delivered: 20, printed: null, source: 'ownChoice', says: ['Our choice'] },
  {
    key: 'handlingCycles',
    delivered: 10,
    printed: [10, 100],
    source: 'ownChoice',
    says: ['2012 and 2017', '100 bendings'],
  },
  { key: 'holeToStiffenerEdgeMm', delivered: 1.27, printed: null, source: 'ownChoice', says: ['2022'] },
  {
    key: 'stiffenerHoleOverDrillMm',
    delivered: 0.4,
    printed: [0.4, 0.51],
    source: 'commonPractice',
    says: ['0.40 and 0.51 mm'],
  },
  { key: 'prepregSetBackMm', delivered: 1.5, printed: null, source: 'ownChoice', says: ['3 mm', '2025', 'IPC-6013'] },
  {
    key: 'bowAndTwistSurfaceMountPct',
    delivered: 0.75,
    printed: [0.75, 0.75],
    source: 'bowAndTwist',
    says: [],
    sourceSays: ['0.75'],
  },
  { key: 'bowAndTwistPct', delivered: 1.5, printed: [1.5, 1.5], source: 'bowAndTwist', says: [], sourceSays: ['1.5'] },
  {
    key: 'letterHeightMm',
    delivered: 1,
    printed: [0.8, 1],
    source: 'guideMarking',
    says: ['0.8 to 1.0 mm'],
    sourceSays: ['0.8 to 1.0 mm'],
  },
  {
    key: 'letterLineMm',
    delivered: 0.15,
    printed: [0.12, 0.18],
    source: 'guideMarking',
    says: ['0.12 to 0.18 mm'],
    sourceSays: ['0.12 to 0.18 mm'],
  },
  {
    key: 'totalMassLossPct',
    delivered: 1,
    printed: [1, 1],
    source: 'outgassingLimits',
    says: [],
    sourceSays: ['1.0 %'],
  },
  {
    key: 'condensableMatterPct',
    delivered: 0.1,
    printed: [0.1, 0.1],
    source: 'outgassingLimits',
    says: [],
    sourceSays: ['0.10 %'],
  },
]
