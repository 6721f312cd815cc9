import { findFieldPattern } from '@/lib/engine'
import { DECIDED_WHEN_WORDS, isLimitKey, LIMITS, type Profile } from '@/lib/engine/catalogue'
import { inSentence } from '@/lib/engine/units'

interface ProfileContentsProps {
  readonly profile: Profile
  /** Questions of the items, by id. */
  readonly questions: Readonly<Record<string, string>>
}

/** What a profile changes, in words: items, limits, required fields, each with its reason. */
export function ProfileContents({ profile, questions }: ProfileContentsProps) {
  const { items, limits, requiredFields, requiredSignatures, leastSurvivalPct } = profile
  const demands = [
    ...(requiredSignatures == null ? [] : [`at least ${requiredSignatures} people sign`]),
    ...(leastSurvivalPct == null ? [] : [`at least ${leastSurvivalPct} % must survive, where a bend moves`]),
  ]
  if (items.length + limits.length + requiredFields.length + demands.length === 0)
    return <p className="muted">It changes nothing yet.</p>
  return (
    <dl className="terms small">
      {demands.length > 0 && (
        <>
          <dt>demands</dt>
          <dd>{demands.join('; ')}</dd>
        </>
      )}
      {items.length > 0 && (
        <>
          <dt>items</dt>
          <dd>
            <ul className="plain-list">
              {items.map((item) => (
                <li key={item.itemId}>
                  {questions[item.itemId] ?? item.itemId} {describeItem(item)}.{' '}
                  <span className="muted">{item.reason}</span>
                </li>
              ))}
            </ul>
          </dd>
        </>
      )}
      {limits.length > 0 && (
        <>
          <dt>limits</dt>
          <dd>
            <ul className="plain-list">
              {limits.map((limit) => (
                <li key={limit.key}>
                  {describeLimit(limit)}. <span className="muted">{limit.note}</span>
                </li>
              ))}
            </ul>
          </dd>
        </>
      )}
      {requiredFields.length > 0 && (
        <>
          <dt>required fields</dt>
          <dd>
            <ul className="plain-list">
              {requiredFields.map(({ field, where, reason }) => (
                <li key={`${field} ${where?.value ?? ''}`}>
                  {findFieldPattern(field)?.label ?? field}
                  {where !== null && ` (where ${where.field} is ${where.value})`}.{' '}
                  <span className="muted">{reason}</span>
                </li>
              ))}
            </ul>
          </dd>
        </>
      )}
    </dl>
  )
}

function describeItem({ asked, severity, decidedWhen, isForEveryDesign }: Profile['items'][number]): string {
  return [
    ...(asked === null ? [] : [asked === 'on' ? 'asked' : 'not asked']),
    ...(severity === null ? [] : [severity]),
    ...(decidedWhen === null ? [] : [`decided in ${DECIDED_WHEN_WORDS[decidedWhen]}`]),
    ...(isForEveryDesign ? ['for every design'] : []),
  ].join(', ')
}

function describeLimit({ key, value, isRelaxed }: Profile['limits'][number]): string {
  if (!isLimitKey(key)) return `${key}: ${value}`
  const { label, sense, unit } = LIMITS[key]
  return `${label}: ${sense === 'at-most' ? 'at most' : 'at least'} ${inSentence(value, unit)}${isRelaxed ? ', relaxed on purpose' : ''}`
}
