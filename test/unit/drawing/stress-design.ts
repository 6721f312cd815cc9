import {
  type Design,
  evaluate,
  makeBlankDesign,
  makePresence,
  NO_PLATING,
  parseDesign,
  UNKNOWN_BEND,
} from '@/lib/engine'
import type { DrawnDesign } from './demo-design'

const LONG =
  'with a name that is as long as somebody who describes everything would make it, and WWWWWWWWWWWWWWWWWWWWWW at the end'
const name = (start: string) => `${start} ${LONG}`.slice(0, 120)

/** Twelve conductor layers, six zones, long names everywhere, and texts that fill a sheet. */
export function makeStressDesign(): DrawnDesign {
  const conductor = (index: number) => ({
    id: `cu-${index}`,
    name: name(`Conductor ${index}`),
    kind: 'conductor',
    thicknessUm: 17.1,
    tolerancePlusUm: 1.7,
    toleranceMinusUm: 1.7,
    materialId: 'copper-ra',
    role: 'signal',
    planePattern: null,
    coverageFraction: 0.5,
    plating:
      index % 3 === 0 ? { process: 'panel', thicknessUm: 25, toleranceUm: 5, materialId: 'copper-plated' } : NO_PLATING,
    processingLossUm: 0,
  })
  const film = (id: string, kind: string, materialId: string, thicknessUm: number) => ({
    id,
    name: name(id),
    kind,
    materialId,
    thicknessUm,
    tolerancePlusUm: thicknessUm / 10,
    toleranceMinusUm: thicknessUm / 8,
  })
  const layers: unknown[] = []
  for (let index = 1; index <= 12; index += 1) {
    layers.push(conductor(index))
    if (index === 12) break
    layers.push(film(`film-${index}`, 'base-film', 'pi-base-adhesiveless', 25))
    layers.push(film(`adhesive-${index}`, 'adhesive', 'acrylic-adhesive', 50))
  }
  layers.push(
    film('adhesive-12', 'adhesive', 'acrylic-adhesive', 50),
    film('stiffener-1', 'stiffener', 'pi-stiffener', 125),
  )
  const ids = layers.map((layer) => (layer as { id: string }).id)
  const kinds = ['rigid', 'flex', 'stiffened', 'flex', 'finger', 'rigid']
  const zones = kinds.map((kind, index) => ({
    id: `zone-${index + 1}`,
    name: name(`Zone ${index + 1}`),
    kind,
    lengthMm: 1234.567,
    widthMm: 20 + index,
    presence: (kind === 'flex'
      ? ids.slice(9, 16)
      : kind === 'finger'
        ? [...ids.slice(12, 16), ...ids.slice(-2)]
        : ids
    ).map((layerId) => makePresence(layerId)),
    contactFinish: null,
    connectorWindow: kind === 'finger' ? { minUm: 270, maxUm: 330 } : null,
    statedThicknessUm: index === 0 ? 1600 : null,
    statedToleranceUm: null,
    throughExpansionPpmPerC: null,
    throughModulusGpa: null,
    glassTransitionDegC: null,
  }))
  const text = (words: string) => `${words} `.repeat(70)
  const blank = makeBlankDesign(name('Stress case'))
  const read = parseDesign({
    ...blank,
    brief: {
      ...blank.brief,
      partNumber: 'X'.repeat(60),
      toleranceScheme: text('datum A is the tooling hole of the first rigid zone;'),
      packingAndHandling: `first line\n\n\n${text('antistatic bag')}`,
      bakeBeforeAssembly: 'W'.repeat(2000),
      whoToAsk: name('Ask'),
    },
    construction: { layers, zones },
    bends: Array.from({ length: 14 }, (_, index) => ({
      ...UNKNOWN_BEND,
      id: `bend-${index + 1}`,
      name: name(`Bend ${index + 1}`),
      zoneId: index % 2 === 0 ? 'zone-2' : 'zone-4',
      insideRadiusMm: 5.125,
      radiusToleranceMm: 0.255,
      angleDeg: 112.5,
      insideFace: 'bottom',
      axisLengthMm: 20,
      use: 'dynamic',
      motion: 'reversed',
      requiredCycles: 1e8,
      radiusHeldBy: 'bonded-in-place',
      distanceToRigidMm: 3,
      strainReliefAtTransition: true,
      triedOnModel: false,
      note: text('keep clear of the cable clamp'),
    })),
    features: {
      ...blank.features,
      outline: {
        verticesMm: Array.from({ length: 200 }, (_, index): [number, number] => {
          const angle = (index / 200) * 2 * Math.PI
          const radius = index % 2 === 0 ? 240 : 180
          const toWholeUm = (mm: number) => Math.round(1000 * mm) / 1000
          return [toWholeUm(radius * Math.cos(angle)), toWholeUm(radius * Math.sin(angle))]
        }),
        rollingDirection: 'along-y',
      },
      holes: Array.from({ length: 90 }, (_, index) => ({
        id: `hole-${index + 1}`,
        name: name(`Hole ${index + 1}`),
        plated: true,
        zoneId: null,
        fromLayerId: null,
        toLayerId: null,
        filling: null,
        wallPlatingUm: null,
        drillMm: 0.25,
        landMm: 0.6,
        nearestBend: { bendId: 'bend-14', distanceMm: 12.3456 },
        clearOfBends: null,
        transitionDistanceMm: 3,
        stiffenerEdgeDistanceMm: null,
        stiffenerHoleMm: null,
      })),
      stiffeners: [
        {
          id: 'stiffener-a',
          name: name('Stiffener'),
          layerId: 'stiffener-1',
          purpose: 'components',
          coverlayOverlapMm: 1,
          bonded: null,
          heatRatingDegC: null,
          nearestBend: null,
          onDrawing: null,
        },
      ],
    },
  })
  if (!read.ok) throw new Error(JSON.stringify(read.issues.slice(0, 5)))
  const design: Design = read.value
  return { design, evaluation: evaluate(design) }
}
