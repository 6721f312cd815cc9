import { CAUTIONS } from '../../cautions'
import { findFieldPattern } from '../../design'
import { ITEM_SECTION_WORDS, ITEM_SECTIONS } from '../../results'
import { citeSource, type SourceKey } from '../../sources'
import { inSentence } from '../../units'
import { DECIDED_WHEN_WORDS, type ItemDefinition } from '../define-item'
import { CATALOGUE } from '../items'
import { getLimitDefinition, LIMIT_KEYS } from '../limits'
import { DELIVERED_PROFILES, type Profile } from '../profiles'
import { REQUIREMENT_RANGES, type RequirementRange } from '../requirements'
import { listRootsOf } from '../roots'
import { SEVERITIES } from '../severity'
import { readItemProse } from './read-prose'

/** Every source that an item rests on, each once: those of its limits first. */
export function listItemSourceKeys(item: ItemDefinition): readonly SourceKey[] {
  return [...new Set([...item.limits.map((key) => getLimitDefinition(key).sourceKey), ...item.sourceKeys])]
}

/** The whole catalogue as a page in Markdown, written from the items themselves. */
export function makeReferencePage(): string {
  const lines = [
    '# Catalogue of review items',
    '',
    `Written by \`npm run catalogue:docs\` from \`lib/engine/catalogue\`; do not edit. ${CATALOGUE.length} items, ${LIMIT_KEYS.length} limits.`,
    '',
    CAUTIONS.join(' '),
    '',
    '## Severities',
    '',
    ...Object.entries(SEVERITIES).map(([severity, meaning]) => `- **${severity}**: ${meaning}`),
    '',
    ...ITEM_SECTIONS.flatMap((section) => [
      `## ${ITEM_SECTION_WORDS[section]}`,
      '',
      ...CATALOGUE.filter((item) => item.section === section).flatMap(describeItem),
    ]),
    '## Limits',
    '',
    'A workspace or a fabricator may set another value within the range; the item then says whose it is.',
    '',
    '| limit | value | may be set to | source | note |',
    '| --- | --- | --- | --- | --- |',
    ...LIMIT_KEYS.map(describeLimitRow),
    '',
    '## Ranges of requirements',
    '',
    'What `requirement-range` holds a stated requirement or rating to: wide, so that what lies outside is most likely a slip of the decimal point, a wrong unit, or a figure that makes an item meet. Common practice and our choice, no published source. Both ends of a temperature range, of a connector window and of a motion are also held against each other.',
    '',
    '| requirement or rating | from | to |',
    '| --- | --- | --- |',
    ...REQUIREMENT_RANGES.map(describeRangeRow),
    '',
    '## Profiles',
    '',
    'Layers over the catalogue for kinds of parts. A project may follow several: the strictest of them holds for each item and each limit. Which items matter for which kind of part is our sorting (common practice, no published source).',
    '',
    ...DELIVERED_PROFILES.flatMap(describeProfile),
  ]
  return lines.join('\n')
}

function describeItem(item: ItemDefinition): string[] {
  const { why, howToCheck } = readItemProse(item)
  const basis =
    item.check === null
      ? "a person's judgment"
      : item.judgment === null
        ? 'computed'
        : "computed, with a person's judgment"
  return [
    `### ${item.question}`,
    '',
    `\`${item.id}\`, ${item.severity}; ${basis}; decided in ${DECIDED_WHEN_WORDS[item.decidedWhen]} by ${item.answeredBy.join(' or ')}; applies to ${item.appliesTo.says}${item.onlyWithProfile === true ? '; asked only with a profile' : ''}.`,
    '',
    why,
    '',
    `How to check: ${howToCheck}`,
    '',
    ...describeRoots(item.id),
    ...(item.judgment === null ? [] : [`Evidence: ${item.judgment.evidence}`, '']),
    ...item.limits.map((key) => {
      const { label, sense, value, unit } = getLimitDefinition(key)
      return `- ${label}: ${sense === 'at-most' ? 'at most' : 'at least'} ${inSentence(value, unit)}`
    }),
    ...listItemSourceKeys(item).map((key) => `- Source: ${citeSource(key)}`),
    '',
  ]
}

/** Which other items may bring this one's failure. */
function describeRoots(itemId: string): string[] {
  const roots = listRootsOf(itemId)
  if (roots.length === 0) return []
  return [`May follow from: ${roots.map((root) => `\`${root.itemId}\` (${root.cause})`).join(', ')}.`, '']
}

function describeLimitRow(key: (typeof LIMIT_KEYS)[number]): string {
  const { label, sense, value, unit, allowed, sourceKey, note } = getLimitDefinition(key)
  const bound = `${sense === 'at-most' ? 'at most' : 'at least'} ${inSentence(value, unit)}`
  const range = `${inSentence(allowed.min)} to ${inSentence(allowed.max, unit)}`
  return `| ${label} (\`${key}\`) | ${bound} | ${range} | ${citeSource(sourceKey)} | ${note} |`
}

function describeRangeRow({ pattern, low, high, forWhat, isAsked }: RequirementRange): string {
  const field = findFieldPattern(pattern)
  const unit = field?.node.unit ?? 'count'
  const remarks = [...(forWhat === undefined ? [] : [forWhat]), ...(isAsked === true ? ['open while blank'] : [])]
  const name = `${field?.label ?? pattern}${remarks.length === 0 ? '' : ` (${remarks.join('; ')})`}`
  return `| ${name} | ${inSentence(low, unit)} | ${inSentence(high, unit)} |`
}

function describeProfile({ id, name, purpose, items, limits, requiredFields }: Profile): string[] {
  return [
    `### ${name}`,
    '',
    `\`${id}\`. ${purpose}`,
    '',
    ...items.map(({ itemId, asked, severity, decidedWhen, isForEveryDesign, reason }) => {
      const parts = [
        ...(asked === null ? [] : [asked === 'on' ? 'asked' : 'not asked']),
        ...(severity === null ? [] : [severity]),
        ...(decidedWhen === null ? [] : [`decided in ${DECIDED_WHEN_WORDS[decidedWhen]}`]),
        ...(isForEveryDesign ? ['for every design'] : []),
      ]
      return `- \`${itemId}\`: ${parts.join(', ')}. ${reason}`
    }),
    ...limits.map(({ key, value, isRelaxed, sourceKey, note }) => {
      const { label, sense, unit } = getLimitDefinition(key)
      const bound = `${sense === 'at-most' ? 'at most' : 'at least'} ${inSentence(value, unit)}`
      return `- ${label}: ${bound}${isRelaxed ? ', relaxed on purpose' : ''} (${citeSource(sourceKey as SourceKey)}). ${note}`
    }),
    ...requiredFields.map(({ field, where, reason }) => {
      const kind = where === null ? '' : ` (where ${where.field} is ${where.value})`
      return `- Required: ${findFieldPattern(field)?.label ?? field}${kind}. ${reason}`
    }),
    '',
  ]
}
