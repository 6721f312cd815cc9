import {
  type ConductorLayer,
  type Design,
  type DielectricLayer,
  type Layer,
  makeBlankDesign,
  makePresence,
  NO_PLATING,
  UNKNOWN_BEND,
  UNKNOWN_IMPEDANCE,
  UNKNOWN_THROUGH_THICKNESS,
  type Zone,
} from '@/lib/engine'

/** Name of the design that the catalogue's examples start from. */
export const EXAMPLE_DESIGN_NAME = 'Example arm'

/**
 * A sound three-layer rigid-flex part: one rolled-annealed layer through the flex, rigid outer layers, a finger end.
 * Every computed item holds on it; the examples of the items each break one thing. A fresh copy at every call.
 */
export function makeExampleDesign(): Design {
  const design = makeBlankDesign(EXAMPLE_DESIGN_NAME)
  Object.assign(design.brief, structuredClone(EXAMPLE_BRIEF))
  Object.assign(design.brief, EXAMPLE_BRIEF)
  design.brief.acceptance.flameClass = 'not-asked'
  design.construction = { layers: makeLayers(), zones: makeZones() }
  // What bends share is copied for each: examples change one of them in place.
  design.bends = makeBends().map((bend) => structuredClone(bend))
  design.features = makeFeatures()
  return structuredClone(design)
}

const EXAMPLE_BRIEF: Partial<Design['brief']> = {
  partNumber: 'EX-100',
  revisionLabel: 'A',
  purpose: 'Joins a moving arm to its controller.',
  performanceClass: 'class-2',
  circuitType: 'type-4',
  installationUses: ['use-a', 'use-b'],
  operatingMinDegC: -20,
  operatingMaxDegC: 70,
  cycleMinDegC: -20,
  cycleMaxDegC: 70,
  temperatureCycles: 500,
  holePlatingQuality: 'good',
  quantityPerYear: 5000,
  surfaceFinish: 'organic-solderability-preservative',
  solderedAssembly: true,
  bakeBeforeAssembly:
    'Dry as the film maker states for this finish; solder within the time the assembler has qualified.',
  packingAndHandling: 'Flat between boards, dry pack with indicator card.',
  panelForm: 'assembly-arrays',
  toleranceScheme: 'Datums on the rigid part and on the finger end; profile tolerance in the restrained state.',
  assembly: {
    solderPeakDegC: 245,
    coverlayRatingDegC: 288,
    carrier: 'array-frame',
    drying: 'bake',
    bakeDegC: 120,
    bakeHours: 4,
    toSolderHours: 2,
    dryingSetBy: 'assembler',
    packedAs: 'flat-between-boards',
    isDryPacked: true,
    storageMonths: 6,
  },
  tolerances: {
    outlineMm: 0.15,
    holeMm: 0.1,
    holeToEdgeMm: 0.15,
    stiffenerMm: 0.4,
    coverlayMm: 0.3,
    bendPositionMm: 0.5,
  },
  array: {
    partCount: 6,
    frameWidthMm: 8,
    tabsOffFlex: true,
    fiducials: true,
    toolingHoles: true,
    badPartMark: true,
  },
  electricalTest: true,
  couponTest: true,
  foldTest: true,
  registrationCriticalFeatures: 'Finger pattern to finger edge.',
  whoToAsk: 'Lead engineer of the project',
  manufacturingReviewDate: '2027-02-01',
  layoutFreezeDate: '2027-02-15',
  needDate: '2027-06-01',
  acceptance: {
    testVoltageVolt: 100,
    continuityOhm: 5,
    isolationMegohm: 100,
    hasSurfaceMountParts: true,
    bowAndTwistPct: 0.7,
    solderingsOnCount: 3,
    solderingsOffCount: 2,
    flameClass: 'not-asked',
    flameClassHeld: null,
    firstArticleCount: 5,
    measuredFlatBy: 'fabricator',
    measuredFoldedBy: 'own-team',
    sectionsBy: 'independent',
  },
  finishTerms: { standard: 'ipc-4555', topMetalUm: null, nickelUm: null, palladiumUm: null },
  marking: {
    partNumber: 'on-part',
    lotOrDate: 'on-part',
    flameMark: 'none',
    method: 'ink',
    area: 'rigid',
    letterHeightMm: 1.2,
    lineWidthMm: 0.2,
    toPadMm: 0.3,
  },
  agreements: {
    orderOrDrawing: 'order',
    drawingOrArtwork: 'drawing',
    drawingOrStandard: 'drawing',
    materialChange: 'approval',
    processChange: 'notice',
    siteChange: 'approval',
    panelChange: 'free',
    copperSubstitute: 'ask-first',
    filmSubstitute: 'same-specification',
    adhesiveSubstitute: 'same-specification',
    boardSubstitute: 'equivalent',
    prototypeTool: 'laser',
    seriesTool: 'laser',
    limitsHoldForSeries: null,
    hasPredecessor: true,
    lessonsReviewed: true,
    isRestricted: true,
    isDeclared: true,
    isHalogenFree: false,
  },
  exposure: {
    skinContact: 'up-to-24-hours',
    touchedFace: 'top',
    openFinishCovered: null,
    skinMaterialsEvaluated: true,
    hasWetEdges: true,
    sealedBy: 'coating',
    ionicLimitUgPerCm2: 1,
    cleaning: 'water',
    dryingDegC: 80,
    dryingHours: 2,
    hasAntenna: true,
    antennaKeepOutMm: 5,
    antennaToMetalMm: 6,
    dischargeEntry: 'connector',
    dischargePath: 'chassis',
    pullForceNewton: 5,
    pullFeature: 'tab',
    movesWhenCold: true,
    coldTestDegC: -25,
    oils: 'splash',
    coolants: 'none',
    cleaners: 'none',
    light: 'none',
    fluidsWithstood: true,
  },
  outgassing: [
    'solder-mask-rigid',
    'fr4-laminate',
    'no-flow-prepreg-epoxy',
    'pi-coverlay',
    'epoxy-adhesive',
    'pi-base-adhesiveless',
    'pi-stiffener',
  ].map((materialId) => ({ materialId, totalLossPct: 0.5, condensablePct: 0.02 })),
}

function film(
  id: string,
  name: string,
  kind: DielectricLayer['kind'],
  materialId: string,
  thicknessUm: number,
  toleranceUm: number,
): DielectricLayer {
  return { id, name, kind, materialId, thicknessUm, tolerancePlusUm: toleranceUm, toleranceMinusUm: toleranceUm }
}

function copper(
  fields: Pick<ConductorLayer, 'id' | 'name' | 'materialId' | 'thicknessUm'> & Partial<ConductorLayer>,
): ConductorLayer {
  return {
    kind: 'conductor',
    tolerancePlusUm: 0.5,
    toleranceMinusUm: 0.5,
    role: 'signal',
    planePattern: null,
    coverageFraction: 0.4,
    plating: NO_PLATING,
    processingLossUm: 0.5,
    ...fields,
  }
}

function makeLayers(): Layer[] {
  return [
    film('mask-top', 'Top solder mask', 'solder-mask', 'solder-mask-rigid', 25, 4),
    copper({
      id: 'l1',
      name: 'L1 rigid',
      materialId: 'copper-ed-hte',
      thicknessUm: 17.1,
      plating: { process: 'panel', thicknessUm: 25, toleranceUm: 4, materialId: 'copper-plated' },
    }),
    film('core-top', 'Top rigid laminate', 'rigid-laminate', 'fr4-laminate', 200, 14),
    film('prepreg-top', 'Top no-flow prepreg', 'no-flow-prepreg', 'no-flow-prepreg-epoxy', 60, 5),
    film('cover-top', 'Coverlay film, flex', 'coverlay-film', 'pi-coverlay', 12.5, 0.8),
    film('cover-top-adhesive', 'Coverlay adhesive, flex', 'adhesive', 'epoxy-adhesive', 25, 2.5),
    copper({
      id: 'l2',
      name: 'L2 flex',
      materialId: 'copper-ra',
      thicknessUm: 12,
      coverageFraction: 0.6,
      plating: { process: 'button', thicknessUm: 20, toleranceUm: 3, materialId: 'copper-plated' },
    }),
    film('base', 'Base film, flex', 'base-film', 'pi-base-adhesiveless', 25, 1),
    film('prepreg-bottom', 'Bottom no-flow prepreg', 'no-flow-prepreg', 'no-flow-prepreg-epoxy', 60, 5),
    film('core-bottom', 'Bottom rigid laminate', 'rigid-laminate', 'fr4-laminate', 200, 14),
    copper({
      id: 'l3',
      name: 'L3 rigid',
      materialId: 'copper-ed-hte',
      thicknessUm: 17.1,
      plating: { process: 'panel', thicknessUm: 25, toleranceUm: 4, materialId: 'copper-plated' },
    }),
    film('mask-bottom', 'Bottom solder mask', 'solder-mask', 'solder-mask-rigid', 25, 4),
    film('stiffener-adhesive', 'Stiffener adhesive', 'adhesive', 'epoxy-adhesive', 25, 2.5),
    film('stiffener', 'Finger stiffener', 'stiffener', 'pi-stiffener', 210, 8),
  ]
}

function zone(fields: Pick<Zone, 'id' | 'name' | 'kind'> & Partial<Zone>, layerIds: readonly string[]): Zone {
  return {
    lengthMm: 40,
    widthMm: 12,
    presence: layerIds.map((layerId) => makePresence(layerId)),
    connectorWindow: null,
    contactFinish: null,
    statedThicknessUm: null,
    statedToleranceUm: 60,
    ...UNKNOWN_THROUGH_THICKNESS,
    ...fields,
  }
}

/** As if measured on the bonded board. */
const MEASURED_BOARD = { throughExpansionPpmPerC: 60, throughModulusGpa: 8, glassTransitionDegC: 140 }

function makeZones(): Zone[] {
  return [
    zone({ id: 'board', name: 'Board', kind: 'rigid', ...MEASURED_BOARD }, [
      'mask-top',
      'l1',
      'core-top',
      'prepreg-top',
      'cover-top',
      'cover-top-adhesive',
      'l2',
      'base',
      'prepreg-bottom',
      'core-bottom',
      'l3',
      'mask-bottom',
    ]),
    zone({ id: 'arm', name: 'Arm', kind: 'flex', lengthMm: 60 }, ['cover-top', 'cover-top-adhesive', 'l2', 'base']),
    zone(
      {
        id: 'fingers',
        name: 'Finger end',
        kind: 'finger',
        presence: [
          { ...makePresence('l2'), platedCopper: 'pads-only' },
          ...['base', 'stiffener-adhesive', 'stiffener'].map((layerId) => makePresence(layerId)),
        ],
        contactFinish: { thicknessUm: 1, toleranceUm: 0.3 },
        connectorWindow: { minUm: 270, maxUm: 330 },
      },
      [],
    ),
  ]
}

function makeBends(): Design['bends'] {
  const common: Omit<Design['bends'][number], 'id' | 'name' | 'insideRadiusMm' | 'use'> = {
    ...UNKNOWN_BEND,
    zoneId: 'arm',
    radiusToleranceMm: 0.3,
    angleDeg: 90,
    insideFace: 'bottom',
    axisLengthMm: 12,
    motion: 'one-way',
    radiusHeldBy: 'former',
    distanceToRigidMm: 5,
    strainReliefAtTransition: true,
    strainReliefKind: 'bead',
    strainReliefWidthMm: 1.5,
    triedOnModel: true,
    flexTest: {
      cyclesPerMinute: 10,
      travelMm: 25.4,
      mandrelDiameterMm: 24,
      pointsOfApplication: 'Clamped at the rigid edge, moved at the finger end.',
    },
    forming: { method: 'tool', by: 'assembler', springbackAllowed: true },
    inProduct: {
      handlingCycles: 5,
      isTiedDown: true,
      furtherMotion: 'none',
      rubsOn: 'nothing',
      followedInEnclosure: true,
    },
    note: '',
  }
  return [
    { ...common, id: 'hinge', name: 'Hinge', insideRadiusMm: 12, use: 'dynamic', requiredCycles: 80_000 },
    { ...common, id: 'rocker', name: 'Rocker', insideRadiusMm: 12, use: 'dynamic', requiredCycles: 20_000 },
    { ...common, id: 'fold', name: 'Assembly fold', insideRadiusMm: 2, use: 'fold-once' },
  ]
}

function dimension(partMm: number, toleranceMm: number, minMm: number | null, maxMm: number | null) {
  return { partMm, toleranceMm, minMm, maxMm }
}

function makeFeatures(): Design['features'] {
  const crossings = ['hinge', 'rocker', 'fold'].map((bendId) => ({
    bendId,
    angleToAxisDeg: 90,
    widthChangesInside: false,
    directionChangesInside: false,
  }))
  return {
    none: [],
    netClasses: [],
    conductors: [
      {
        id: 'supply',
        name: 'Supply',
        layerId: 'l2',
        widthMm: 0.5,
        spaceMm: 0.2,
        lengthMm: 60,
        currentAmp: 0.4,
        allowedRiseDegC: 20,
        allowedDropVolt: 0.5,
        impedanceOhm: null,
        netClassId: null,
        impedance: UNKNOWN_IMPEDANCE,
        voltageVolt: 20,
        isCovered: true,
        returnAsLong: false,
        carriesPower: true,
        frequencyMhz: 1,
        crossings,
      },
    ],
    holes: [
      {
        id: 'via',
        name: 'Board via',
        zoneId: 'board',
        plated: true,
        fromLayerId: 'l1',
        toLayerId: 'l3',
        filling: 'open',
        wallPlatingUm: 25,
        drillMm: 0.3,
        landMm: 0.8,
        nearestBend: { bendId: 'hinge', distanceMm: 8 },
        clearOfBends: null,
        transitionDistanceMm: 2,
        stiffenerEdgeDistanceMm: null,
        stiffenerHoleMm: null,
      },
    ],
    pads: [
      {
        id: 'land',
        name: 'Sensor pad',
        layerId: 'l2',
        zoneId: 'arm',
        hasPlatedHole: false,
        anchorCount: 2,
        coverlayCaptureMm: 0.15,
        teardrop: true,
        nearestBend: { bendId: 'hinge', distanceMm: 6 },
        clearOfBends: null,
      },
    ],
    outlineCorners: [
      { id: 'notch', name: 'Notch', insideRadiusMm: 1.5, bordersFlex: true, isPulled: false, tearStop: true },
    ],
    widthSteps: [
      {
        id: 'neck',
        name: 'Supply neck',
        layerId: 'l2',
        wideMm: 0.5,
        narrowMm: 0.3,
        taperLengthMm: 1,
        nearestBend: null,
        clearOfBends: true,
      },
    ],
    coverlayOpenings: [
      {
        id: 'window',
        name: 'Sensor window',
        method: 'laser',
        openingMm: 1,
        webMm: 0.5,
        landMm: 1.4,
        neededOpenMm: 0.4,
        nearestBend: { bendId: 'hinge', distanceMm: 6 },
        clearOfBends: null,
      },
    ],
    stiffeners: [
      {
        id: 'finger-stiffener',
        name: 'Finger stiffener',
        layerId: 'stiffener',
        purpose: 'connector',
        coverlayOverlapMm: 1,
        bonded: 'before-soldering',
        heatRatingDegC: 288,
        nearestBend: { bendId: 'hinge', distanceMm: 8 },
        onDrawing: true,
      },
    ],
    slits: [{ id: 'slit', name: 'Arm slit', endReliefDiameterMm: 1.6, widthMm: 0.5, tearStop: true }],
    components: [
      {
        id: 'sensor',
        name: 'Sensor',
        nearestBend: { bendId: 'hinge', distanceMm: 6 },
        clearOfBends: null,
        transitionDistanceMm: 3,
        zoneId: 'board',
        side: 'top',
        overStiffener: null,
      },
    ],
    connectors: [
      {
        id: 'socket',
        name: 'Socket',
        zoneId: 'fingers',
        finish: 'electroplated-nickel-gold',
        isHardGold: true,
        matings: 20,
        isBlindInsertion: false,
        hasPlaneOrHoleBeforeBend: false,
        firstBendMm: 5,
        pitch: dimension(0.5, 0.02, 0.47, 0.53),
        contactWidth: dimension(0.3, 0.03, 0.25, 0.35),
        exposedLength: dimension(3.5, 0.2, 3.2, 3.8),
        endWidth: dimension(12, 0.07, 11.9, 12.1),
        edgeToContact: dimension(0.75, 0.07, 0.65, 0.85),
        stiffenerLength: dimension(6, 0.3, 5.5, null),
      },
    ],
    registrations: [{ id: 'finger-to-edge', name: 'Contacts to the finger edge', neededMm: 0.1, heldMm: 0.08 }],
    rigidEdges: {
      bead: 'called-out',
      beadMaterial: 'flexible epoxy',
      beadWidthMm: 1.5,
      beadHeightMm: 0.5,
      prepregSetBackMm: 0.5,
      squeezeOutMm: 0.8,
    },
    shieldGround: { pointCount: 4, openingsShown: true, maxResistanceOhm: 0.5 },
    outline: null,
    copperToOutlineMm: 0.6,
    outlineCutBy: 'laser',
    routing: {
      cornersCurved: true,
      evenlySpacedInBends: true,
      staggeredOnAdjacentLayers: true,
      coverlayEdgeInsideBend: false,
      cutOutsConsideredAtTightBends: true,
      layersNamedOnDrawing: true,
      bendsCalledOutOnDrawing: true,
      coverlayDetailOnDrawing: true,
    },
  }
}
