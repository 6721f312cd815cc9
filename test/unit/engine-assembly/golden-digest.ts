import type { Evaluation, Outcome } from '@/lib/engine'

const DIGITS = 6
const figure = (value: number) => (Number.isInteger(value) ? String(value) : String(Number(value.toPrecision(DIGITS))))

/**
 * What the full results come to, a line for each outcome: item, verdict, where, value, limit. This is what a reviewer reads when numbers
 * moved; the full results beside it prove that nothing else did.
 */
export function makeDigest({ engineVersion, designName, bends, items }: Evaluation): string {
  const lines = [
    `${designName}, engine ${engineVersion}`,
    '',
    'bend: peak strain %, allowable %, thickness um of its leaves, radius by strain mm',
  ]
  for (const bend of bends) {
    const figures = [
      bend.peakStrainPct,
      bend.allowablePct,
      bend.leaves.map(({ thicknessUm }) => figure(thicknessUm)).join(' + '),
      bend.minRadiusByStrainMm,
    ]
    lines.push(
      [bend.bendId, ...figures.map((each) => (typeof each === 'number' ? figure(each) : (each ?? '-')))].join(' | '),
    )
  }
  lines.push('', 'item | basis | verdict | place | value | limit')
  for (const { itemId, basis, verdict, outcomes, followsFrom } of items) {
    const follows = followsFrom === undefined ? [] : [`follows from ${followsFrom.join(' and ')}`]
    lines.push([itemId, basis, verdict, ...follows].join(' | '))
    for (const outcome of outcomes) lines.push(`  ${describeOutcome(outcome)}`)
  }
  return `${lines.join('\n')}\n`
}

function describeOutcome(outcome: Outcome): string {
  const place = outcome.places.map(({ kind, id }) => `${kind} ${id}`).join(', ')
  if (outcome.kind === 'decided') {
    const { verdict, value, limit } = outcome
    const bound =
      limit.upperValue === undefined ? figure(limit.value) : `${figure(limit.value)} to ${figure(limit.upperValue)}`
    return [verdict, place, `${figure(value.value)} ${value.unit}`, `${limit.sense} ${bound} ${limit.unit}`].join(' | ')
  }
  if (outcome.kind === 'not-computed') {
    return ['not-computed', place, outcome.missing.map(({ path }) => path.join('.')).join(', ')].join(' | ')
  }
  if (outcome.kind === 'said') return [outcome.kind, outcome.verdict, outcome.rests, place].join(' | ')
  return [outcome.kind, place].join(' | ')
}
