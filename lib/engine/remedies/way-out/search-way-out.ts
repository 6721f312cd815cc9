import { findRouteClashes } from '@/lib/plan'
import type { Design } from '../../design'
import type { ItemResult } from '../../results'
import { ENGINE_VERSION } from '../../version'
import { drawEdits, takeOffPlan } from '../on-plan'
import type { RemedyOptions } from '../options'
import { makePatch } from '../patch'
import { type BendChange, clearBends } from './clear-bends'
import {
  type Failure,
  hasNewUnknown,
  isCalculatedFailure,
  isCleared,
  type Judge,
  type Judged,
  listNewFailures,
  makeJudge,
} from './judge'
import { listMovers, type Move, moveApart } from './moves'
import type { LeftItem, MovedByWayOut, WayOut, WayOutChange, WayOutProgress } from './way-out'

/** Share of the work that the sections of bends take. */
const BENDS_SHARE = 0.7
/** Rounds over what is left: a move may make room for another. Our choice. */
const MOST_ROUNDS = 3

/**
 * A small set of changes with which nothing fails that is calculated from the design, found over all items at once: sections of bends by the remedies'
 * families, then what lies beside them, then each number that misses its limit. Every change is judged by the whole checklist before it is taken; none is
 * taken that makes another item fail. What people stated, and what the review has to answer, is listed as theirs.
 *
 * It is a search that takes the best at each step: a smaller set may exist. No number of the design redraws a file: what the artwork makes fail is left out of the search
 * and listed by itself.
 *
 * @param design  as parseDesign gave it
 * @returns draw steps until it is done; `next(true)` stops it, and what was found so far is returned
 */
export function* searchWayOut(
  design: Design,
  given: RemedyOptions = {},
): Generator<WayOutProgress, WayOut, boolean | undefined> {
  const options: RemedyOptions = { ...given, facts: {} }
  const judge = makeJudge(options)
  let triedCount = 0
  const onTried = () => {
    triedCount += 1
  }
  let isStopped = false
  const before = judge(design)
  const changes: WayOutChange[] = []

  const searched = takeOffPlan(design)
  const search = clearBends(judge(searched), judge, options, onTried)
  let step = search.next()
  while (step.done !== true) {
    isStopped = (yield { triedCount, doneFraction: step.value * BENDS_SHARE }) === true
    step = search.next(isStopped)
  }
  const bends = step.value
  let present = before
  if (bends.changes.length > 0) {
    const drawn = drawEdits(design, searched, bends.design, before.context.getLimit('bendToRigidMm').value)
    present = judge(drawn)
    changes.push(...bends.changes.map(describeBendChange))
  }

  const apart = separateRoutes(present, before, judge, onTried)
  present = apart.judged
  changes.push(...apart.changes)

  for (let round = 0; round < MOST_ROUNDS && !isStopped; round += 1) {
    const known = changes.length
    for (const failure of [...present.failures]) {
      isStopped = (yield { triedCount, doneFraction: BENDS_SHARE + ((1 - BENDS_SHARE) * round) / MOST_ROUNDS }) === true
      if (isStopped) break
      if (!present.failures.some(({ key }) => key === failure.key)) continue
      const taken = clearOne(failure, present, judge, onTried)
      if (taken === null) continue
      present = taken.judged
      addChange(changes, taken.change)
    }
    if (changes.length === known) break
  }
  const inArtwork = listArtworkFailures(before, given)
  return describeWayOut({ design, before, changes, present, judge, inArtwork, triedCount, isStopped })
}

function describeBendChange({ candidate, bendId, itemIds, relaxes }: BendChange): WayOutChange {
  const { id, title, detail, cautions } = candidate
  return { id: `${bendId}:${id}`, title, detail, itemIds, relaxes, cautions }
}

const toChange = ({ id, title, detail, relaxes, cautions }: Move, itemIds: readonly string[]): WayOutChange => ({
  id,
  title,
  detail,
  itemIds,
  relaxes,
  cautions,
})

/** A number that was entered twice is one change, with its last value. */
function addChange(changes: WayOutChange[], change: WayOutChange): void {
  const at = changes.findIndex(({ id }) => id === change.id)
  const known = changes[at]
  if (known === undefined) changes.push(change)
  else changes[at] = { ...change, itemIds: [...new Set([...known.itemIds, ...change.itemIds])] }
}

/** The first proposal that clears the failure and brings no other. */
function clearOne(failure: Failure, present: Judged, judge: Judge, onTried: () => void) {
  const clashes = countClashes(present.design)
  for (const mover of listMovers(failure.item.id)) {
    for (const move of mover(failure, present)) {
      onTried()
      const judged = judge(move.design)
      if (!isCleared(failure, present, judged) || listNewFailures(present, judged).length > 0) continue
      if (hasNewUnknown(present, judged) || countClashes(judged.design) > clashes) continue
      const gone = present.failures.filter(({ key }) => !judged.failures.some((each) => each.key === key))
      return { judged, change: toChange(move, [...new Set(gone.map(({ item }) => item.id))]) }
    }
  }
  return null
}

const listClashes = ({ plan, features }: Design) => (plan === null ? [] : findRouteClashes(plan, features.conductors))
const countClashes = (design: Design): number => listClashes(design).length

/** Conductors that came to one layer are drawn over each other: they move side by side, so that the draft shorts nothing. */
function separateRoutes(present: Judged, before: Judged, judge: Judge, onTried: () => void) {
  const known = new Set(listClashes(before.design).map(({ conductorIds }) => conductorIds.join(' ')))
  const changes: WayOutChange[] = []
  let judged = present
  for (;;) {
    const clash = listClashes(judged.design).find(({ conductorIds }) => !known.has(conductorIds.join(' ')))
    if (clash === undefined) return { judged, changes }
    known.add(clash.conductorIds.join(' '))
    const count = countClashes(judged.design)
    for (const move of moveApart(judged.design, [...clash.conductorIds].reverse(), clash.neededMm)) {
      onTried()
      const isApart = !listClashes(move.design).some(
        ({ conductorIds }) => conductorIds.join(' ') === clash.conductorIds.join(' '),
      )
      if (!isApart || countClashes(move.design) >= count) continue
      const after = judge(move.design)
      if (listNewFailures(judged, after).length > 0) continue
      judged = after
      changes.push(toChange(move, []))
      break
    }
  }
}

interface Found {
  readonly design: Design
  readonly before: Judged
  readonly changes: readonly WayOutChange[]
  readonly present: Judged
  readonly judge: Judge
  readonly inArtwork: readonly LeftItem[]
  readonly triedCount: number
  readonly isStopped: boolean
}

/** With the folded part, which is looked at once. */
function describeWayOut({ design, before, changes, present, judge, inArtwork, triedCount, isStopped }: Found): WayOut {
  const [was, is] = [judge(design, before, true), judge(present.design, present, true)]
  const items = [...is.results.values()]
  return {
    engineVersion: ENGINE_VERSION,
    changes,
    patch: makePatch(design, present.design),
    undoPatch: makePatch(present.design, design),
    failing: { before: countItems(was), after: countItems(is) },
    moved: items.flatMap((result) => describeMoved(result, was, is)),
    left: items.filter(isCalculated).map((result) => toLeft(result, is)),
    forPeople: items.filter((result) => isTheirs(result)).map((result) => toLeft(result, is)),
    inArtwork,
    triedCount,
    isStopped,
  }
}

/** Items that fail by what was measured in the artwork of the design as it is, and would not without it. */
function listArtworkFailures(before: Judged, given: RemedyOptions): readonly LeftItem[] {
  if (Object.keys(given.facts ?? {}).length === 0) return []
  const measured = makeJudge(given)(before.design, before)
  const ids = new Set(listNewFailures(before, measured).map(({ item }) => item.id))
  return [...measured.results.values()]
    .filter(({ itemId }) => ids.has(itemId))
    .map((result) => toLeft(result, measured))
}

const countItems = (judged: Judged): number => [...judged.results.values()].filter(isCalculated).length

const isCalculated = ({ verdict, outcomes }: ItemResult): boolean =>
  verdict === 'fails' && outcomes.some(isCalculatedFailure)

/** Fails by what somebody stated: it takes a look, and no number. */
const isTheirs = (result: ItemResult): boolean => result.verdict === 'fails' && !isCalculated(result)

function toLeft({ itemId, basis, headline }: ItemResult, judged: Judged): LeftItem {
  return { itemId, ...judged.describe(itemId), basis, headline }
}

function describeMoved(after: ItemResult, was: Judged, is: Judged): MovedByWayOut[] {
  const earlier = was.results.get(after.itemId)
  if (earlier === undefined || earlier.verdict === after.verdict) return []
  return [
    {
      itemId: after.itemId,
      ...is.describe(after.itemId),
      before: earlier.verdict,
      after: after.verdict,
      headline: after.headline,
    },
  ]
}
