import { type Assembly, assemble, findFill } from './assembly'
import {
  evaluateCatalogue,
  findDrawnHatch,
  type ItemDefinition,
  makeLimitLookup,
  markFollowers,
  USUAL_ITEMS,
} from './catalogue'
import { LIFE_CAUTION_SHORT } from './cautions'
import type { EvaluationContext, LimitOverride, ReviewFacts } from './context'
import type { Design } from './design'
import type { TestedLife } from './flex-tests'
import {
  type BendResult,
  CANNOT_TELL,
  type DraftEvaluation,
  type DraftItemResult,
  type Evaluation,
  type Headline,
  type Quantity,
  type Reading,
  readBendLife,
  readBendStrain,
} from './results'
import { ENGINE_VERSION } from './version'

export interface EvaluateOptions {
  /** Limits of the workspace and of a fabricator; later ones win. */
  readonly limits?: readonly LimitOverride[]
  /** What the review knows and the design does not. */
  readonly facts?: ReviewFacts
  /** Flex tests of the workspace and of fabricators, fitted. */
  readonly testedLives?: readonly TestedLife[]
  /** Items of a workspace's own edition of the catalogue; the delivered ones where left out. */
  readonly items?: readonly ItemDefinition[]
}

/**
 * A design, limits and facts in, results out: what is recorded, signed and reported.
 *
 * @param design  as parseDesign gave it; content never throws, it is "not computed" with the missing input named
 * @returns plain data, the same on every machine but for the last digits of pow, exp and trigonometry
 */
export function evaluate(design: Design, options: EvaluateOptions = {}): Evaluation {
  const { items = USUAL_ITEMS, testedLives = [] } = options
  const assembly = assemble(design, { testedLives })
  const context = buildContext(design, options, assembly)
  // What a change leaves as it is stands already, and no picture is drawn of it.
  // What was stated stays as it was: in a mended design the drawn values stand, and none contradicts itself.
  const evaluateWith = (mended: Design) => {
    const mendedContext = buildContext(
      mended,
      options,
      assemble(mended, { testedLives, detail: 'figures', basis: assembly }),
    )
    return { ...mendedContext, drawing: { ...mendedContext.drawing, values: context.drawing.values } }
  }
  return collect(context, markFollowers(evaluateCatalogue(context, items), items, context, evaluateWith))
}

/**
 * The same for a design that nobody records. Only which failures follow from another is left out: to find that, designs with a cause gone are evaluated,
 * which takes as long again.
 */
export function evaluateDraft(design: Design, options: EvaluateOptions = {}): DraftEvaluation {
  const { items = USUAL_ITEMS, testedLives = [] } = options
  const context = buildContext(design, options, assemble(design, { testedLives }))
  const results = evaluateCatalogue(context, items).map(
    (item): DraftItemResult =>
      item.verdict === 'fails' || item.verdict === 'thin-margin' ? { ...item, followsFrom: 'not-sought' } : item,
  )
  return collect(context, results)
}

function collect<Result extends DraftItemResult>(context: EvaluationContext, items: readonly Result[]) {
  const { design, zones, bends, conductors, damage } = context
  return {
    engineVersion: ENGINE_VERSION,
    designName: design.name,
    zones,
    bends,
    conductors,
    damage,
    items,
    headlineQuantities: listHeadlines(context),
  }
}

/** What the catalogue's items look at, computed once. */
export function buildContext(
  given: Design,
  { limits = [], facts = {}, testedLives = [] }: EvaluateOptions = {},
  { index, drawing, sections, zones, bends, conductors, damage }: Assembly = assemble(given, { testedLives }),
): EvaluationContext {
  const zoneResults = new Map(zones.map((zone) => [zone.zoneId, zone]))
  const bendResults = new Map(bends.map((bend) => [bend.bendId, bend]))
  const context: EvaluationContext = {
    design: index.design,
    drawing,
    findMaterial: index.findMaterial,
    findFill: (zoneId, layerId) => findFill(sections, zoneId, layerId),
    findDrawnHatch: (zoneId, layerId) => findDrawnHatch(context, zoneId, layerId),
    layersById: index.layersById,
    zonesById: index.zonesById,
    zones,
    bends,
    conductors,
    damage,
    findZoneResult: (zoneId) => zoneResults.get(zoneId) ?? null,
    findBendResult: (bendId) => bendResults.get(bendId) ?? null,
    getLimit: makeLimitLookup(limits),
    facts,
  }
  return context
}

/** The few numbers that a list of revisions shows: thickest zone, thinnest flex zone, tightest strain, shortest life. */
function listHeadlines({ zones, bends }: EvaluationContext): Evaluation['headlineQuantities'] {
  const headlines: Headline[] = []
  const flexUm = zones.filter((zone) => zone.kind === 'flex').map((zone) => zone.thicknessUm)
  if (zones.length > 0) {
    headlines.push({
      label: 'Greatest thickness',
      quantity: { value: Math.max(...zones.map((zone) => zone.thicknessUm)), unit: 'um' },
    })
  }
  if (flexUm.length > 0) {
    headlines.push({ label: 'Least flex thickness', quantity: { value: Math.min(...flexUm), unit: 'um' } })
  }
  const strain = findHeadline(bends, readBendStrain, (one, other) => one > other)
  if (strain !== null) headlines.push({ label: 'Largest copper strain', ...strain })
  const life = findHeadline(bends, readBendLife, (one, other) => one < other)
  if (life !== null) headlines.push({ label: `Shortest life, ${LIFE_CAUTION_SHORT}`, ...life })
  return headlines
}

/** The worst of all bends; nobody can tell it where one of them cannot be told: that may be the worst. */
function findHeadline(
  bends: readonly BendResult[],
  read: (bend: BendResult) => Reading | null,
  isWorse: (one: number, other: number) => boolean,
): Omit<Headline, 'label'> | null {
  let worst: Quantity | null = null
  const unknown: string[] = []
  for (const bend of bends) {
    const reading = read(bend)
    if (reading === null) continue
    if (reading === CANNOT_TELL) unknown.push(bend.name)
    else if (worst === null || isWorse(reading.value, worst.value)) worst = reading
  }
  if (unknown.length > 0) return { quantity: null, because: `${CANNOT_TELL} for ${unknown.join(', ')}` }
  return worst === null ? null : { quantity: worst }
}
