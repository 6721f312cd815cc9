import { type DecidedOutcome, type ItemResult, SOURCES } from '@/lib/engine'

/** Everything that makes a result unfit to be shown and recorded, in words. */
export function findResultProblems({ headline, outcomes }: ItemResult): string[] {
  const problems: string[] = []
  if (/NaN|Infinity|undefined|null|\.\.$/.test(headline)) problems.push(`headline "${headline}"`)
  for (const outcome of outcomes) {
    if (!outcome.summary.endsWith('.')) problems.push(`summary "${outcome.summary}" is no sentence`)
    if (outcome.kind === 'not-computed' && outcome.missing.length === 0) problems.push('names no missing input')
    if (outcome.kind === 'decided') problems.push(...findDecisionProblems(outcome))
  }
  return problems
}

function findDecisionProblems({ value, range, limit, margin, equation, sourceKey, verdict, summary }: DecidedOutcome) {
  const problems: string[] = []
  const numbers = [value.value, margin, limit.value, limit.upperValue ?? 0, range?.low ?? 0, range?.high ?? 0]
  if (!numbers.every(Number.isFinite)) problems.push(`"${summary}" holds ${numbers.join(', ')}`)
  if (value.unit !== limit.unit) problems.push(`value in ${value.unit}, limit in ${limit.unit}`)
  if (equation === '') problems.push('no equation')
  if (!Object.hasOwn(SOURCES, sourceKey)) problems.push(`source "${sourceKey}" is not recorded`)
  if (!Object.hasOwn(SOURCES, limit.sourceKey))
    problems.push(`source "${limit.sourceKey}" of the limit is not recorded`)
  if (limit.owner.name === '') problems.push('a limit of nobody')
  if (margin < 0 !== (verdict === 'fails')) problems.push(`verdict ${verdict} with margin ${margin}`)
  return problems
}
