import { type Design, listLibraryMaterials } from '@/lib/engine'
import { drawPlan } from '../catalogue/drawn-plan'
import { makeExampleDesign } from '../catalogue/example-design'

/** The example with something in each record and list that a requirement stands in. */
export function makeFull(): Design {
  const design = makeExampleDesign()
  const [connector] = design.features.connectors
  if (connector === undefined) throw new RangeError('the example has no connector end')
  design.features.netClasses.push({
    id: 'fast',
    name: 'Fast lines',
    impedanceOhm: 50,
    tolerancePct: 10,
    kind: 'single',
    referenceLayerId: null,
    coupon: true,
    crosstalkLimitPct: 5,
    riseTimePs: 1000,
  })
  design.plan = {
    ...drawPlan(design),
    housing: { heldAreaId: 'board', alongXMm: 200, alongYMm: 60, heightMm: 40 },
    dimensions: [
      {
        id: 'length',
        direction: 'straight',
        fromMm: [0, 0],
        toMm: [60, 0],
        plusMm: 0.1,
        minusMm: 0.1,
        isReference: false,
      },
    ],
    connectorEnds: [
      {
        id: 'end',
        connectorId: connector.id,
        fromMm: [140, 0],
        toMm: [140, 12],
        insertionDepthMm: 4,
        contactCount: 22,
        firstContactMm: [140, 0.75],
        contactStepMm: [0, 0.5],
        contactLengthMm: 3.5,
        platedLengthMm: 4,
        target: { atMm: [140, 6, 0], pointsTo: [1, 0, 0], topFaces: [0, 0, 1], withinMm: 0.5, withinDeg: 5 },
      },
    ],
  }
  const [step] = design.features.widthSteps
  if (step !== undefined) step.nearestBend = { bendId: 'hinge', distanceMm: 8 }
  connector.stiffenerLength.maxMm ??= (connector.stiffenerLength.minMm ?? 4) + 2
  Object.assign(design.brief, { lifeSurvivalPct: 99, lifeWeibullSlope: 3 })
  const foil = listLibraryMaterials().find(({ id }) => id === 'copper-ra')
  if (foil === undefined) throw new RangeError('no foil in the library')
  design.materials.push({ ...structuredClone(foil), id: 'own-foil' })
  return design
}
