import { z } from 'zod'
import type { SEVERITIES } from '@/lib/engine/catalogue'

type Severity = keyof typeof SEVERITIES

/**
 * A project's rules of sign-off: who may sign, who must have reviewed, who may approve a waiver. One table says what can be
 * set. The choices of a rule stand in order, the strictest first, so that stricter and looser are never a matter of opinion.
 */

interface PolicyRule {
  readonly label: string
  /** Strictest first. */
  readonly choices: readonly { readonly value: string; readonly words: string }[]
  /** What holds where nothing was chosen. */
  readonly usual: string
}

const WAIVER_CHOICES = [
  {
    value: 'quality',
    words:
      'quality alone, and only someone who is not an author of design or artwork, did not propose it and did not answer the item',
  },
  {
    value: 'no-author',
    words:
      'a lead or quality who is not an author of design or artwork, did not propose it and did not answer the item',
  },
  { value: 'second-person', words: 'a lead or quality who did not propose it and did not answer the item' },
  { value: 'anyone', words: 'any lead or quality, including the proposer' },
] as const

export const SIGN_OFF_RULES = {
  waiverBlocking: { label: 'Waiver of a blocking item is approved by', choices: WAIVER_CHOICES, usual: 'no-author' },
  waiverMajor: { label: 'Waiver of a major item is approved by', choices: WAIVER_CHOICES, usual: 'no-author' },
  waiverMinor: {
    label: 'Waiver of a minor item or of advice is approved by',
    choices: WAIVER_CHOICES,
    usual: 'second-person',
  },
  review: {
    label: 'Before signing, the content is declared reviewed by',
    choices: [
      { value: 'quality', words: 'quality, by someone who is not an author of it' },
      { value: 'no-author', words: 'someone of the team who is not an author of it' },
      { value: 'none', words: 'nobody: a review is not required' },
    ],
    usual: 'no-author',
  },
  authorSigns: {
    label: 'May an author of design or artwork sign?',
    choices: [
      { value: 'no', words: 'no' },
      { value: 'beside', words: 'only beside a signer who is not an author' },
      { value: 'yes', words: 'yes, also alone' },
    ],
    usual: 'no',
  },
  authorReleases: {
    label: 'May an author of design or artwork release?',
    choices: [
      { value: 'no', words: 'no' },
      { value: 'yes', words: 'yes' },
    ],
    usual: 'no',
  },
  differences: {
    label: 'Where words differ from numbers, before signing',
    choices: [
      { value: 'none', words: 'each must be corrected' },
      {
        value: 'acknowledged',
        words: 'each must be corrected, or a lead or quality who did not write it lets it stand with a reason',
      },
      { value: 'listed', words: 'they are listed and block no signature' },
    ],
    usual: 'acknowledged',
  },
} as const satisfies Record<string, PolicyRule>

export type SignOffRule = keyof typeof SIGN_OFF_RULES
export const SIGN_OFF_RULE_KEYS = Object.keys(SIGN_OFF_RULES) as readonly SignOffRule[]
type Choice<K extends SignOffRule> = (typeof SIGN_OFF_RULES)[K]['choices'][number]['value']

export type SignOffPolicy = { readonly [K in SignOffRule]: Choice<K> } & {
  /** How many different people must sign. */
  readonly requiredSignatures: number
  /** Capacities in which somebody must sign, each by another person. Empty: any granted capacity. */
  readonly requiredCapacities: readonly string[]
}

/** What a revision goes by: the policy as it was when the review began, tightened since where the project's was. */
export interface PinnedSignOffPolicy {
  /** The project's count of its policy; 0 is the policy as delivered. */
  readonly version: number
  readonly rules: SignOffPolicy
}

const choice = <K extends SignOffRule>(key: K) => {
  const { choices, usual } = SIGN_OFF_RULES[key]
  // A choice of a later version is not known here: what is usual holds, never something looser.
  return z
    .enum(choices.map(({ value }) => value) as [Choice<K>, ...Choice<K>[]])
    .default(usual as never)
    .catch(usual as never)
}

const policySchema = z.object({
  waiverBlocking: choice('waiverBlocking'),
  waiverMajor: choice('waiverMajor'),
  waiverMinor: choice('waiverMinor'),
  review: choice('review'),
  authorSigns: choice('authorSigns'),
  authorReleases: choice('authorReleases'),
  differences: choice('differences'),
  requiredSignatures: z.int().min(1).default(1),
  requiredCapacities: z.array(z.string()).default([]),
})

export const pinnedSignOffPolicySchema = z.object({ version: z.int(), rules: policySchema })

/** What holds in a project that has made no choice of its own. */
export const USUAL_SIGN_OFF_POLICY: SignOffPolicy = policySchema.parse({})

const SEVERITY_RULES: Readonly<Record<Severity, 'waiverBlocking' | 'waiverMajor' | 'waiverMinor'>> = {
  blocking: 'waiverBlocking',
  major: 'waiverMajor',
  minor: 'waiverMinor',
  advice: 'waiverMinor',
}

/** Who may approve a waiver of an item of this severity; a severity that is not known takes the strictest rule there is. */
export function getWaiverRule(policy: SignOffPolicy, severity: string): Choice<'waiverBlocking'> {
  return Object.hasOwn(SEVERITY_RULES, severity) ? policy[SEVERITY_RULES[severity as Severity]] : 'quality'
}

/** Nobody signs twice, so each capacity takes a person of its own. */
export function countRequiredSignatures({ requiredSignatures, requiredCapacities }: SignOffPolicy): number {
  return Math.max(1, requiredSignatures, requiredCapacities.length)
}

const rank = (key: SignOffRule, value: string) =>
  SIGN_OFF_RULES[key].choices.findIndex((candidate) => candidate.value === value)

/** A rule's choice in words, as every exit prints it. */
export function describeChoice(key: SignOffRule, value: string): string {
  return SIGN_OFF_RULES[key].choices.find((candidate) => candidate.value === value)?.words ?? value
}

export const PEOPLE_WHO_SIGN = 'People who must sign'

/** The whole policy, rule by rule, with what is looser than usual marked. */
export function listPolicyRows(
  policy: SignOffPolicy,
): readonly { readonly label: string; readonly words: string; readonly isLoosened: boolean }[] {
  return [
    ...SIGN_OFF_RULE_KEYS.map((key) => ({
      label: SIGN_OFF_RULES[key].label,
      words: describeChoice(key, policy[key]),
      isLoosened: rank(key, policy[key]) > rank(key, USUAL_SIGN_OFF_POLICY[key]),
    })),
    { label: PEOPLE_WHO_SIGN, words: String(countRequiredSignatures(policy)), isLoosened: false },
    {
      label: 'Capacities that must sign',
      words: policy.requiredCapacities.length === 0 ? 'any granted one' : policy.requiredCapacities.join(', '),
      isLoosened: false,
    },
  ]
}

export interface PolicyChange {
  readonly direction: 'tightened' | 'loosened'
  readonly sentence: string
}

/** What differs, rule by rule, and which way. */
export function comparePolicies(before: SignOffPolicy, after: SignOffPolicy): PolicyChange[] {
  const changes = SIGN_OFF_RULE_KEYS.flatMap((key): PolicyChange[] => {
    const [was, is] = [rank(key, before[key]), rank(key, after[key])]
    if (was === is) return []
    const words = `${describeChoice(key, before[key])}, now ${describeChoice(key, after[key])}`
    return [{ direction: is > was ? 'loosened' : 'tightened', sentence: `${SIGN_OFF_RULES[key].label}: ${words}` }]
  })
  if (before.requiredSignatures !== after.requiredSignatures) {
    changes.push({
      direction: after.requiredSignatures < before.requiredSignatures ? 'loosened' : 'tightened',
      sentence: `People who must sign: ${before.requiredSignatures}, now ${after.requiredSignatures}`,
    })
  }
  for (const name of before.requiredCapacities.filter((own) => !after.requiredCapacities.includes(own))) {
    changes.push({ direction: 'loosened', sentence: `A signature as ${name} is no longer required` })
  }
  for (const name of after.requiredCapacities.filter((own) => !before.requiredCapacities.includes(own))) {
    changes.push({ direction: 'tightened', sentence: `A signature as ${name} is required` })
  }
  return changes
}

/** Of each rule the stricter choice: what an open revision goes by at once when its project's policy is tightened. */
export function combinePolicies(one: SignOffPolicy, other: SignOffPolicy): SignOffPolicy {
  const strictest = SIGN_OFF_RULE_KEYS.map((key) => [
    key,
    rank(key, one[key]) <= rank(key, other[key]) ? one[key] : other[key],
  ])
  return {
    ...(Object.fromEntries(strictest) as Pick<SignOffPolicy, SignOffRule>),
    requiredSignatures: Math.max(one.requiredSignatures, other.requiredSignatures),
    requiredCapacities: [...new Set([...one.requiredCapacities, ...other.requiredCapacities])].sort(),
  }
}
