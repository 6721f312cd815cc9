import { evaluateItem, type ItemDefinition, type ItemVerdict, USUAL_ITEMS } from '../catalogue'
import type { InputPattern } from '../catalogue/item-inputs'
import type { Design } from '../design'
import { getOutcomeVerdict, type ItemResult, type Outcome } from '../results'
import type { BendAssessment } from './assess'
import type { RemedyOptions } from './options'
import type { ForbiddenNeed, MovedItem } from './remedy'

/** The way of the part to its folded state takes longer than all other items together: it is judged for what would lead. */
export const FOLD_ITEM_ID = 'folded-clearance'

/** Named as a need already, where it stands against a set. */
const ITEM_OF_NEED: Partial<Record<ForbiddenNeed['kind'], string>> = {
  current: 'conductor-current',
  'voltage-drop': 'voltage-drop',
  'connector-window': 'finger-thickness',
  encapsulation: 'copper-encapsulation',
  'zone-length': 'bend-fit',
  'damage-sum': 'damage-sum',
}

/** The more, the more attention it asks for; what a person judges has nothing against it that can be computed. */
const RANK: Readonly<Record<ItemVerdict, number>> = {
  meets: 0,
  'not-applicable': 0,
  'needs-judgment': 0,
  'thin-margin': 1,
  'not-computed': 2,
  'cannot-tell': 2,
  fails: 3,
}

const known = new WeakMap<BendAssessment, Map<ItemDefinition, ItemResult>>()

function resultOf(item: ItemDefinition, assessment: BendAssessment): ItemResult {
  const results = known.get(assessment) ?? new Map<ItemDefinition, ItemResult>()
  known.set(assessment, results)
  const result = results.get(item) ?? evaluateItem(item, assessment.context)
  results.set(item, result)
  return result
}

/** Items of the checklist that a set of changes makes fail, or moves for better or worse. */
export function findMovedItems(
  before: BendAssessment,
  after: BendAssessment,
  forbiddenBy: readonly ForbiddenNeed[],
  { items = USUAL_ITEMS }: RemedyOptions,
): MovedItem[] {
  const named = new Set(forbiddenBy.map(({ kind }) => ITEM_OF_NEED[kind]))
  // Without a plan nothing is folded: it is quickly said.
  const isFoldDue = after.design.plan === null
  const isTouched = findTouched(before.context.design, after.context.design)
  return items.flatMap((item) =>
    named.has(item.id) || (item.id === FOLD_ITEM_ID && !isFoldDue) || !item.restsOn.some(isTouched)
      ? []
      : compareItem(item, before, after),
  )
}

/** Edits share what they leave alone: an item none of whose inputs is touched has its verdict. */
function findTouched(before: Design, after: Design): (pattern: InputPattern) => boolean {
  const known = new Map<string, boolean>()
  return (pattern) => {
    // One step into a list or an object is as far as edits share: entries of lists are found by id.
    const [part = '', inPart] = pattern.split('.')
    const key = inPart === undefined || inPart === '*' ? part : `${part}.${inPart}`
    const found = known.get(key) ?? readPart(before, key) !== readPart(after, key)
    known.set(key, found)
    return found
  }
}

const readPart = (design: Design, key: string): unknown =>
  key.split('.').reduce<unknown>((value, step) => (value as Record<string, unknown> | null)?.[step], design)

/** What the folded state and the way to it come to; empty where nothing moves. */
export function findMovedFold(
  before: BendAssessment,
  after: BendAssessment,
  { items = USUAL_ITEMS }: RemedyOptions,
): MovedItem[] {
  return items.flatMap((item) => (item.id === FOLD_ITEM_ID ? compareItem(item, before, after) : []))
}

function compareItem(item: ItemDefinition, before: BendAssessment, after: BendAssessment): MovedItem[] {
  const [was, is] = [resultOf(item, before), resultOf(item, after)]
  const failure = findNewFailure(was.outcomes, is.outcomes)
  if (failure === null && RANK[was.verdict] === RANK[is.verdict]) return []
  const effect = failure !== null ? 'fails' : RANK[is.verdict] > RANK[was.verdict] ? 'worse' : 'better'
  return [
    {
      itemId: item.id,
      question: item.question,
      severity: item.severity,
      effect,
      before: was.verdict,
      after: is.verdict,
      because: failure?.summary ?? is.headline,
    },
  ]
}

/** An outcome that fails at a place where none did before. */
function findNewFailure(before: readonly Outcome[], after: readonly Outcome[]): Outcome | null {
  const failed = new Set(before.filter(doesFail).map(placeOf))
  return after.find((outcome) => doesFail(outcome) && !failed.has(placeOf(outcome))) ?? null
}

const doesFail = (outcome: Outcome): boolean => getOutcomeVerdict(outcome) === 'fails'

/** Which layer decides at a bend or in a zone may change: the place is the same. */
function placeOf({ places }: Outcome): string {
  const others = places.filter(({ kind }) => kind !== 'layer')
  return (others.length > 0 ? others : places).map(({ kind, id }) => `${kind} ${id}`).join(', ')
}

/** What the part would not do its job without, or what is likely to cost yield, life or a rebuild. */
const hasWeight = ({ severity }: Pick<MovedItem, 'severity'>): boolean =>
  severity === 'blocking' || severity === 'major'

/** Makes fail what has weight. */
export const isBreak = (moved: MovedItem): boolean => moved.effect === 'fails' && hasWeight(moved)

/** How many items of weight a set makes fail: the others need not be worked out for it. */
export function countBreaks(
  before: BendAssessment,
  after: BendAssessment,
  forbiddenBy: readonly ForbiddenNeed[],
  options: RemedyOptions,
): number {
  const { items = USUAL_ITEMS } = options
  return findMovedItems(before, after, forbiddenBy, { ...options, items: items.filter(hasWeight) }).filter(isBreak)
    .length
}
