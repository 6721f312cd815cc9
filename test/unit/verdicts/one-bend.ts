import {
  type Bend,
  type ConductorLayer,
  type Design,
  type Evaluation,
  evaluate,
  getOutcomeVerdict,
  makeBlankDesign,
  makePresence,
  NO_PLATING,
  type Outcome,
  UNKNOWN_BEND,
  UNKNOWN_THROUGH_THICKNESS,
  type Verdict,
} from '@/lib/engine'

export interface OneBend {
  readonly foilId?: string
  readonly insideRadiusMm?: number
  readonly requiredCycles?: number | null
  readonly survivalPct?: number | null
  readonly bends?: readonly Partial<Bend>[]
  readonly copper?: Partial<ConductorLayer>
}

/** From the inside out: cover film 25, acrylic 25, foil 18, adhesiveless base film 25 um, bent one way to 4 mm. */
export function makeOneBend({
  foilId = 'copper-ra',
  insideRadiusMm = 4,
  requiredCycles = 50_000,
  survivalPct = 99,
  bends = [{}],
  copper = {},
}: OneBend = {}): Design {
  const blank = makeBlankDesign('One bend')
  const film = (id: string, kind: 'coverlay-film' | 'adhesive' | 'base-film', materialId: string) => ({
    id,
    name: id,
    kind,
    materialId,
    thicknessUm: 25,
    tolerancePlusUm: 0,
    toleranceMinusUm: 0,
  })
  return {
    ...blank,
    brief: { ...blank.brief, lifeSurvivalPct: survivalPct, lifeWeibullSlope: 2 },
    construction: {
      layers: [
        film('cover', 'coverlay-film', 'pi-coverlay'),
        film('glue', 'adhesive', 'acrylic-adhesive'),
        {
          id: 'foil',
          name: 'foil',
          kind: 'conductor',
          materialId: foilId,
          thicknessUm: 18,
          tolerancePlusUm: 0,
          toleranceMinusUm: 0,
          role: 'signal',
          planePattern: null,
          coverageFraction: 1,
          plating: NO_PLATING,
          processingLossUm: 0,
          ...copper,
        },
        film('base', 'base-film', 'pi-base-adhesiveless'),
      ],
      zones: [
        {
          id: 'flex',
          name: 'flex',
          kind: 'flex',
          lengthMm: 40,
          widthMm: 10,
          presence: ['cover', 'glue', 'foil', 'base'].map((id) => makePresence(id)),
          connectorWindow: null,
          contactFinish: null,
          statedThicknessUm: null,
          statedToleranceUm: null,
          ...UNKNOWN_THROUGH_THICKNESS,
        },
      ],
    },
    bends: bends.map((bend, at) => ({
      ...UNKNOWN_BEND,
      id: `bend-${at}`,
      name: `Bend ${at}`,
      zoneId: 'flex',
      insideRadiusMm,
      radiusToleranceMm: 0,
      angleDeg: 90,
      insideFace: 'top',
      axisLengthMm: 10,
      use: 'dynamic',
      motion: 'one-way',
      requiredCycles,
      radiusHeldBy: 'former',
      ...bend,
    })),
  }
}

export function listOutcomes(evaluation: Evaluation, itemId: string): readonly Outcome[] {
  const item = evaluation.items.find((each) => each.itemId === itemId)
  if (item === undefined) throw new Error(`no item ${itemId}`)
  return item.outcomes
}

export function verdictOf(design: Design, itemId: string): Verdict | 'needs-judgment' {
  const item = evaluate(design).items.find((each) => each.itemId === itemId)
  if (item === undefined) throw new Error(`no item ${itemId}`)
  return item.verdict
}

/** Worst outcome of an item, left as it was computed: a person's turn does not hide it. */
export function listVerdicts(design: Design, itemId: string): Verdict[] {
  return listOutcomes(evaluate(design), itemId).map(getOutcomeVerdict)
}
