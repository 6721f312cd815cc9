import { readdirSync, readFileSync } from 'node:fs'
import { beforeAll, describe, expect, test } from 'vitest'
import { buildCopperStack, gatherFacts, measureOnPlan, type NamedFile, readSet } from '@/lib/artwork'
import { type Design, evaluate, type Outcome, parseDesignText } from '@/lib/engine'
import { groundOf } from '@/lib/engine/artwork-check'
import { buildPackage, readArchive } from '@/lib/package'
import { makeContent, makeKeys, makeSnapshot, readSeedDesign } from './content-factory'

const pipitFiles = readdirSync('seed/artwork')
  .filter((name) => name.startsWith('pipit'))
  .map((fileName) => ({ fileName, bytes: new Uint8Array(readFileSync(`seed/artwork/${fileName}`)) }))

let bytes: Uint8Array
let design: Design

beforeAll(async () => {
  const snapshot = makeSnapshot(readSeedDesign('pipit-rev-a'), pipitFiles)
  bytes = await buildPackage(makeContent(snapshot, pipitFiles), makeKeys())
  const archive = readArchive(bytes)
  if (!archive.ok) throw new Error(archive.issues.map(({ message }) => message).join('; '))
  const own = archive.value.find(({ path }) => path === 'design.json')
  const read = parseDesignText(new TextDecoder().decode(own?.bytes))
  if (!read.ok) throw new Error(read.issues.map(({ message }) => message).join('; '))
  design = read.value
}, 400_000)

/** What the checklist says where these files are the artwork of the package's own design. */
function agreementOf(files: readonly NamedFile[]): {
  readonly names: string[]
  readonly failing: string[]
  readonly outcomes: readonly Outcome[]
} {
  const set = readSet(files)
  const stack = buildCopperStack(set)
  const artwork = gatherFacts(set, () => '', stack)
  const ground = groundOf(design)
  if (ground === null) throw new Error('the package draws no plan')
  const onPlan = measureOnPlan(set, stack, ground)
  const { items } = evaluate(design, { facts: { artworkFileCount: files.length, artwork, onPlan } })
  const outcomes = items.find(({ itemId }) => itemId === 'artwork-agreement')?.outcomes ?? []
  return {
    names: set.files.filter(({ role }) => role.role === 'copper').map(({ name }) => name),
    failing: outcomes.flatMap((each) => (each.kind === 'decided' && each.verdict === 'fails' ? [each.summary] : [])),
    outcomes,
  }
}

describe('a released package that is imported again', () => {
  test('as the one archive that it is holds artwork and design that agree', () => {
    const { names, failing, outcomes } = agreementOf([{ name: 'package.zip', bytes }])
    expect(names).toEqual(
      expect.arrayContaining([expect.stringMatching(/pipit-l1/), expect.stringMatching(/pipit-l2/)]),
    )
    expect(failing).toEqual([])
    // And something was compared.
    expect(outcomes.some(({ summary }) => /\d\d pairs of statements were compared/.test(summary))).toBe(true)
  })

  test('is found out where one of its files is of another state', () => {
    const archive = readArchive(bytes)
    if (!archive.ok) throw new Error('the package cannot be read')
    const files = archive.value.map(({ path, bytes: content }): NamedFile => {
      if (!path.endsWith('pipit-drill-plated.drl')) return { name: path, bytes: content }
      const text = new TextDecoder().decode(content).replace('X4.875Y35.000\n', '')
      return { name: path, bytes: new TextEncoder().encode(text) }
    })
    const { failing } = agreementOf(files)
    expect(failing.some((sentence) => sentence.includes('12 of 13 where the plan has them'))).toBe(true)
  })
})
