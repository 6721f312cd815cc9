import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { ArtworkFacts } from '@/lib/artwork'
import { type Design, evaluate, type ItemResult, parseDesign } from '@/lib/engine'
import { JOB_KINDS } from '@/lib/jobs/kinds'
import { makeFacts, makeFile } from './fact-factory'

const NAMES = ['pipit-profile.gbr', 'pipit-drill-plated.drl', 'pipit-drill-unplated.drl']
const HOOKS = { onProgress: () => {}, isFinishAsked: () => false }

const readText = (name: string): string => readFileSync(`seed/artwork/${name}`, 'utf8')
const readPipit = (): Design => {
  const parsed = parseDesign(JSON.parse(readFileSync('seed/designs/pipit-rev-a.json', 'utf8')))
  if (!parsed.ok) throw new Error('the demo design cannot be read')
  return parsed.value
}

/** The demo's files with some texts changed, read as the server reads them. */
async function readFiles(changes: Readonly<Record<string, (text: string) => string>> = {}): Promise<ArtworkFacts> {
  const read = await JOB_KINDS.artwork.load()
  const files = NAMES.map((name) => ({
    name,
    bytes: new TextEncoder().encode((changes[name] ?? ((text) => text))(readText(name))),
  }))
  return (await read({ files, roles: [], ground: null }, HOOKS)).facts
}

function judge(artwork: ArtworkFacts, change: (design: Design) => void = () => {}): ItemResult {
  const design = readPipit()
  change(design)
  const { items } = evaluate(design, { facts: { artworkFileCount: artwork.files.length, artwork } })
  const item = items.find(({ itemId }) => itemId === 'artwork-agreement')
  if (item === undefined) throw new Error('the item was not judged')
  return item
}

/** What the item says differs, sentence by sentence. */
const differences = (item: ItemResult): string[] =>
  item.outcomes.flatMap((outcome) =>
    outcome.kind === 'decided' && outcome.verdict === 'fails' ? [outcome.summary] : [],
  )

describe('artwork and design', () => {
  test('agree in the demo, of which nobody can yet say everything: its copper is not there', async () => {
    const item = judge(await readFiles())
    expect(differences(item)).toEqual([])
    expect(item.verdict).not.toBe('meets')
    // What agrees is still nobody's calculation: somebody has to stand by it.
    expect(item.outcomes.filter(({ kind }) => kind === 'decided')).toEqual([
      expect.objectContaining({ isStated: true }),
    ])
    expect(item.outcomes.flatMap((outcome) => (outcome.kind === 'cannot-tell' ? [outcome.because] : []))).toContain(
      'no file of the artwork is known to be copper',
    )
  })

  const inProfile = (from: string | RegExp, to: string) => ({
    'pipit-profile.gbr': (text: string) => text.replaceAll(from, to),
  })
  const inPlated = (from: string, to: string) => ({
    'pipit-drill-plated.drl': (text: string) => text.replaceAll(from, to),
  })
  const cutOut =
    'X3000000Y20000000D02*\nX5000000Y20000000D01*\nX5000000Y22000000D01*\nX3000000Y22000000D01*\nX3000000Y20000000D01*\nM02*'

  test.each([
    [
      'an arm 0.2 mm longer',
      inProfile('109000000', '109200000'),
      'Size of the outline: 109.2 × 45 mm in pipit-profile.gbr, 109 × 45 mm in the plan.',
    ],
    [
      'a corner that is not rounded',
      inProfile(
        /X26000000Y12000000D01\*\nG02\*\nX24000000Y14000000I0J2000000D01/g,
        'X24000000Y12000000D01*\nG01*\nX24000000Y14000000D01',
      ),
      'Area within the outline',
    ],
    ['a cut-out', inProfile('M02*', cutOut), 'Cut-outs of the outline: 1 in pipit-profile.gbr, 0 in the plan.'],
    [
      'a hole that is missing',
      inPlated('X20.875Y35.000\n', ''),
      'Number of holes of 0.25 mm: 12 in pipit-drill-plated.drl, 13 in "Vias at the island" in the plan.',
    ],
    [
      'a larger drill',
      inPlated('T1C0.250', 'T1C0.300'),
      'Holes of 0.3 mm: 13 holes in pipit-drill-plated.drl, no hole of this size in the features.',
    ],
    [
      'vias that are not plated',
      inPlated('Plated,1,2,PTH', 'NonPlated,1,2,NPTH'),
      'Plating of holes of 0.25 mm: not plated in pipit-drill-plated.drl, plated in "Vias at the island" of the features.',
    ],
    [
      'holes down to a third layer',
      inPlated('Plated,1,2,PTH', 'Plated,1,3,PTH'),
      'Layers that the holes of pipit-drill-plated.drl join: 1 to 3 in pipit-drill-plated.drl, 1 to 2 in the construction.',
    ],
  ])('%s is found', async (_, changes, expected) => {
    const item = judge(await readFiles(changes))
    expect(item.verdict).toBe('fails')
    expect(differences(item).join('\n')).toContain(expected)
  })

  test('the same numbers in inches are other holes', async () => {
    expect(judge(await readFiles(inPlated('METRIC', 'INCH'))).verdict).toBe('fails')
  })

  test('a profile beyond 2 m is not read whole, and so no contradiction of its own', async () => {
    expect(judge(await readFiles(inProfile('%MOMM*%', '%MOIN*%'))).verdict).toBe('cannot-tell')
  })

  test('a set that is turned by a quarter and moved agrees as before', async () => {
    const turn = (text: string) =>
      text
        .replaceAll(/X(-?\d+)Y(-?\d+)/g, (_, x, y) => `X${7_000_000 - Number(y)}Y${Number(x)}`)
        .replaceAll(/I(-?\d+)J(-?\d+)/g, (_, i, j) => `I${-Number(j)}J${Number(i)}`)
    const item = judge(await readFiles({ 'pipit-profile.gbr': turn }))
    expect(differences(item).filter((each) => !each.startsWith('Where'))).toEqual([])
  })

  test('a profile that does not close leaves area and cut-outs open, with the place', async () => {
    const item = judge(await readFiles(inProfile('X0Y45000000D01*\n', 'X0Y44000000D01*\nX0Y43000000D02*\n')))
    const open = item.outcomes.flatMap((outcome) => (outcome.kind === 'cannot-tell' ? [outcome.because] : []))
    expect(open.join()).toMatch(/its strokes do not close, first at \(0, 4[34]\) mm/)
    expect(item.verdict).not.toBe('meets')
  })

  test('what was not read whole is never said to agree', async () => {
    const item = judge(await readFiles(inProfile('G75*', 'G75*\nD99*')))
    expect(
      item.outcomes.flatMap((outcome) => (outcome.kind === 'cannot-tell' ? [outcome.because] : [])).join(),
    ).toContain('was not read whole: line')
    expect(item.verdict).not.toBe('meets')
  })

  test('what a broken file lacks is no contradiction: nobody can tell', async () => {
    const item = judge(await readFiles(inPlated('X20.875Y35.000\n', 'X20.875Y35.0Q0\n')))
    expect(differences(item)).toEqual([])
    const open = item.outcomes.flatMap((outcome) => (outcome.kind === 'cannot-tell' ? [outcome.because] : []))
    expect(open.join()).toContain('12 in pipit-drill-plated.drl and 13 in "Vias at the island" in the plan, but')
  })

  test('a job file of another thickness and size, a project of another name, and a cover where none is, are found', () => {
    const job = {
      name: null,
      revision: null,
      sizeMm: null,
      copperLayerCount: null,
      thicknessMm: null,
      stackThicknessMm: null,
      stackCopperCount: null,
    }
    const facts = makeFacts([
      makeFile('part.gbrjob', {
        kind: 'job',
        objectCount: null,
        job: { ...job, thicknessMm: 1.6, copperLayerCount: 4, name: 'QI-2041' },
      }),
      makeFile('bottom-stiffener.gbr', { role: { role: 'stiffener', side: 'top' } }),
      makeFile('top.gbr', { project: { name: 'QI-3107', mark: null, revision: 'A' } }),
    ])
    expect(differences(judge(facts)).map((each) => each.split(':')[0])).toEqual([
      'Number of conductor layers',
      'Stiffener at the top',
      'Thickness',
      'Project of the files',
      'Part number',
    ])
  })
})
