import { hashJson } from './canonical'
import { compareDesigns } from './compare-designs'
import { listVerdictMoves } from './compare-results'
import { describeActionChanges, describeDeclaredChanges, describeThreadChanges } from './declared-changes'
import { comparePolicies } from './sign-off-policy'
import { buildSignedContent, hashPresentSubstance, readSignedDesign, type SignedContent } from './signed-content'
import type { ReviewSnapshot } from './snapshot'
import type { VoidingChange } from './voiding-changes'

export interface ContentChange {
  readonly area:
    | 'brief'
    | 'materials'
    | 'construction'
    | 'bends'
    | 'features'
    | 'plan'
    | 'artwork'
    | 'answers'
    | 'waivers'
    | 'declarations'
    | 'threads'
    | 'actions'
    | 'template'
    | 'policy'
    | 'authors'
    | 'differences'
    | 'results'
  readonly sentence: string
  /** Whose matter it is, where it is not everybody's: a fabricator's id, or null for the team. */
  readonly about?: string | null
}

/** Which fields differ between two signed contents, in the trade's words: what voided a signature. */
export function describeChanges(before: SignedContent, after: SignedContent): ContentChange[] {
  const changes: ContentChange[] = compareDesigns(readSignedDesign(before), readSignedDesign(after)).map(
    ({ area, sentence }) => ({
      area: area === 'name' ? 'brief' : area,
      sentence,
    }),
  )
  const add = (area: ContentChange['area'], sentence: string) => changes.push({ area, sentence })

  const oldFiles = new Map(before.artwork.map((file) => [file.fileName, file.sha256]))
  for (const { fileName, sha256 } of after.artwork) {
    const old = oldFiles.get(fileName)
    oldFiles.delete(fileName)
    if (old === undefined) add('artwork', `artwork ${fileName} added`)
    else if (old !== sha256) add('artwork', `artwork ${fileName} replaced`)
  }
  for (const fileName of oldFiles.keys()) add('artwork', `artwork ${fileName} removed`)

  const oldAnswers = new Map(before.answers.map((answer) => [answer.itemId, answer]))
  for (const answer of after.answers) {
    const old = oldAnswers.get(answer.itemId)
    oldAnswers.delete(answer.itemId)
    const question = answer.question
    if (old === undefined) add('answers', `item added: ${question}`)
    else if (old.state !== answer.state) add('answers', `answer ${say(old.state)} to ${say(answer.state)}: ${question}`)
    else if (old.reason !== answer.reason) add('answers', `reason changed: ${question}`)
    else if (hashJson(old.evidence) !== hashJson(answer.evidence)) add('answers', `evidence changed: ${question}`)
    else if (old.question !== question) add('answers', `wording of the item changed: ${question}`)
  }
  for (const { question } of oldAnswers.values()) add('answers', `item removed: ${question}`)

  const questions = new Map([...before.answers, ...after.answers].map(({ itemId, question }) => [itemId, question]))
  const oldWaivers = new Map(before.waivers.map((waiver) => [waiver.itemId, waiver]))
  for (const waiver of after.waivers) {
    const old = oldWaivers.get(waiver.itemId)
    oldWaivers.delete(waiver.itemId)
    const question = questions.get(waiver.itemId) ?? waiver.itemId
    if (old === undefined) add('waivers', `waiver approved: ${question}`)
    else if (hashJson(old) !== hashJson(waiver)) add('waivers', `waiver replaced: ${question}`)
  }
  for (const { itemId } of oldWaivers.values()) {
    add('waivers', `waiver no longer valid: ${questions.get(itemId) ?? itemId}`)
  }

  for (const sentence of describeActionChanges(before, after)) changes.push({ area: 'actions', sentence, about: null })
  for (const change of describeDeclaredChanges(before, after)) changes.push({ area: 'declarations', ...change })
  for (const change of describeThreadChanges(before, after)) changes.push({ area: 'threads', ...change })

  if (hashJson(before.template ?? null) !== hashJson(after.template ?? null)) {
    const [was, is] = [before.template, after.template].map((template) => ({
      version: template?.version ?? 0,
      profiles: (template?.profiles ?? []).map(({ name }) => name).join(', '),
    }))
    if (was?.version !== is?.version) add('template', `catalogue version ${was?.version} to ${is?.version}`)
    if (was?.profiles !== is?.profiles) {
      add('template', `profiles: ${was?.profiles || 'none'} to ${is?.profiles || 'none'}`)
    } else if (was?.version === is?.version) {
      add('template', 'content of the catalogue or of its profiles')
    }
  }
  if (before.signOffPolicy !== undefined && after.signOffPolicy !== undefined) {
    for (const { sentence } of comparePolicies(before.signOffPolicy.rules, after.signOffPolicy.rules)) {
      add('policy', `sign-off policy: ${sentence}`)
    }
    if (before.signOffPolicy.version !== after.signOffPolicy.version) {
      add('policy', `sign-off policy version ${before.signOffPolicy.version} to ${after.signOffPolicy.version}`)
    }
  } else if (before.signOffPolicy !== after.signOffPolicy) {
    add('policy', after.signOffPolicy === undefined ? 'no sign-off policy' : 'a sign-off policy')
  }
  if (hashJson(before.authors ?? null) !== hashJson(after.authors ?? null)) {
    const known = new Set((before.authors ?? []).map(({ name }) => name))
    const added = (after.authors ?? []).filter(({ name }) => !known.has(name)).map(({ name }) => name)
    add('authors', added.length === 0 ? 'what each author changed' : `author added: ${added.join(', ')}`)
  }
  for (const { fact } of listOnlyIn(after.differences, before.differences))
    add('differences', `difference let stand: ${fact}`)
  for (const { fact } of listOnlyIn(before.differences, after.differences))
    add('differences', `difference taken up: ${fact}`)
  if (before.engineVersion !== after.engineVersion) {
    add('results', `engine ${before.engineVersion ?? 'none'} to ${after.engineVersion ?? 'none'}`)
  }
  if (before.limitsHash !== after.limitsHash) add('results', 'limits in force, or sheets of a fabricator, changed')
  if (hashJson(before.results) !== hashJson(after.results)) {
    const moves = listVerdictMoves(before.results, after.results)
    for (const move of moves) {
      const question = questions.get(move.itemId) ?? move.itemId
      add('results', `verdict ${say(move.before ?? 'none')} to ${say(move.after ?? 'none')}: ${question}`)
    }
    if (moves.length === 0) add('results', 'numbers in the results changed; no verdict changed')
  }
  return changes
}

function listOnlyIn<T>(some: readonly T[] = [], others: readonly T[] = []): T[] {
  const known = new Set(others.map((one) => hashJson(one)))
  return some.filter((one) => !known.has(hashJson(one)))
}

const say = (word: string) => word.replaceAll('-', ' ')

export interface SignatureToVoid {
  readonly signatureId: string
  readonly reason: string
  readonly changes: readonly VoidingChange[]
}

/**
 * Signatures that a change leaves on other content. Called in the transaction that makes the change, with the state
 * before and after it.
 */
export function findSignaturesToVoid(before: ReviewSnapshot, after: ReviewSnapshot): SignatureToVoid[] {
  const standing = after.signatures.filter(({ voided }) => voided === null)
  if (standing.length === 0) return []
  const substance = hashPresentSubstance(after)
  const left = standing.filter(({ substanceHash }) => substanceHash !== substance)
  if (left.length === 0) return []
  const changes = describeChanges(buildSignedContent(before), buildSignedContent(after)).map(
    ({ area: _area, ...change }): VoidingChange => change,
  )
  return left.map(({ id }) => ({
    signatureId: id,
    reason: 'the content changed after signing',
    changes: changes.length > 0 ? changes : [{ sentence: 'the record of the revision' }],
  }))
}
