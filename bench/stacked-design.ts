import {
  type Design,
  type Layer,
  makeBlankDesign,
  makePresence,
  NO_PLATING,
  UNKNOWN_BEND,
  UNKNOWN_THROUGH_THICKNESS,
} from '@/lib/engine'

/** Layers of one leaf: cover, adhesive, copper, film, copper, adhesive, cover, and air to the next leaf. */
const LEAF_KINDS = [
  'coverlay-film',
  'adhesive',
  'conductor',
  'base-film',
  'conductor',
  'adhesive',
  'coverlay-film',
  'unbonded-gap',
] as const

/**
 * A flex zone of many layers with one bend per fifty of them, for measuring how cost grows. Leaves of seven layers with air between them
 * are what such a part would be; `bonded` leaves the air out and makes one leaf of it all.
 */
export function makeStackedDesign(layerCount: number, { bonded }: { bonded: boolean }): Design {
  const blank = makeBlankDesign(`${layerCount} layers`)
  const layers: Layer[] = []
  for (let at = 0; layers.length < layerCount; at += 1) {
    const kind = LEAF_KINDS[at % LEAF_KINDS.length] ?? 'base-film'
    if (kind === 'unbonded-gap' && bonded) continue
    layers.push(makeLayer(kind, layers.length))
  }
  return {
    ...blank,
    construction: {
      layers,
      zones: [
        {
          id: 'zone',
          name: 'Zone',
          kind: 'flex',
          lengthMm: 100,
          widthMm: 20,
          presence: layers.map(({ id }) => makePresence(id)),
          connectorWindow: null,
          contactFinish: null,
          statedThicknessUm: null,
          statedToleranceUm: null,
          ...UNKNOWN_THROUGH_THICKNESS,
        },
      ],
    },
    bends: [
      {
        ...UNKNOWN_BEND,
        id: 'bend',
        name: 'Bend',
        zoneId: 'zone',
        insideRadiusMm: 50,
        radiusToleranceMm: 1,
        angleDeg: 90,
        insideFace: 'top',
        axisLengthMm: 20,
        use: 'dynamic',
        motion: 'one-way',
        requiredCycles: 1000,
        radiusHeldBy: 'former',
        distanceToRigidMm: 5,
        strainReliefAtTransition: true,
        triedOnModel: true,
        note: '',
      },
    ],
  }
}

function makeLayer(kind: (typeof LEAF_KINDS)[number], at: number): Layer {
  const id = `layer-${at}`
  const name = `Layer ${at}`
  switch (kind) {
    case 'unbonded-gap':
      return { id, name, kind, thicknessUm: 50 }
    case 'conductor':
      return {
        id,
        name,
        kind,
        thicknessUm: 12,
        tolerancePlusUm: 1,
        toleranceMinusUm: 1,
        materialId: 'copper-ra',
        role: 'signal',
        planePattern: null,
        coverageFraction: 0.4,
        plating: NO_PLATING,
        processingLossUm: 1,
      }
    default:
      return {
        id,
        name,
        kind,
        thicknessUm: 25,
        tolerancePlusUm: 2,
        toleranceMinusUm: 2,
        materialId:
          kind === 'adhesive' ? 'acrylic-adhesive' : kind === 'base-film' ? 'pi-base-adhesiveless' : 'pi-coverlay',
      }
  }
}
