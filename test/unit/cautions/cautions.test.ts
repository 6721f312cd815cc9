import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { runEvaluateCommand } from '@/lib/cli/evaluate-command'
import { drawLifePlot, drawSheets, FILE_UNITS, PRINT_PALETTE, toSvg } from '@/lib/drawing'
import { CAUTIONS, evaluate, LIFE_CAUTION, LIFE_CAUTION_SHORT, SOURCE_KINDS } from '@/lib/engine'
import { makeReferencePage } from '@/lib/engine/catalogue/prose'
import { makeDataFiles, makeReadme } from '@/lib/package/data-files'
import { makeSummary, makeTitleBlock } from '@/lib/package/report/opening'
import { makeSources } from '@/lib/package/report/sources'
import { makeContent } from '../../integration/package/content-factory'
import { makeDocument, makeOptions } from '../drawing/demo-design'
import { readDesignFile } from '../engine-assembly/demo-design-files'

const SKUA = 'seed/designs/skua-rev-b.json'
const skua = readDesignFile(SKUA)
const results = evaluate(skua)

/** Words alone: exits wrap their lines in different places. */
const wordsOf = (text: string) => text.replaceAll(/\s+/g, ' ')
const expectCautions = (text: string) => {
  for (const caution of CAUTIONS) expect(wordsOf(text)).toContain(caution)
}

describe('the cautions', () => {
  test('name the engineer, the fabricator, the order of magnitude, the standards, and uses with rules of their own', () => {
    const all = CAUTIONS.join(' ')
    for (const word of ['engineer', 'fabricator', LIFE_CAUTION_SHORT, 'test', 'contract', 'standards', 'local codes']) {
      expect(all).toContain(word)
    }
    expect(all).toMatch(/medical, aviation and automotive/)
  })

  test('are worded in one place', () => {
    const files = ['app', 'lib', 'seed'].flatMap((folder) =>
      readdirSync(folder, { recursive: true, encoding: 'utf8' })
        .filter((file) => /\.tsx?$/.test(file))
        .map((file) => path.join(folder, file)),
    )
    const worded = files.filter((file) =>
      /replace neither|estimates of order of magnitude|Defer to the/.test(readFileSync(file, 'utf8')),
    )
    expect(worded).toEqual([path.join('lib', 'engine', 'cautions', 'index.ts')])
  })
})

describe('every exit carries them', () => {
  test('evaluate, as text and as JSON', () => {
    expectCautions(runEvaluateCommand([SKUA], '2026-11-23').text)
    const json = JSON.parse(runEvaluateCommand([SKUA, '--json'], '2026-11-23').text)
    expect(json.cautions).toEqual(CAUTIONS)
    expect(Object.keys(json)[0]).toBe('cautions')
  })

  test('results and checklist of the package, and its readme', () => {
    const content = makeContent()
    const files = new Map(makeDataFiles(content).map((file) => [file.path, new TextDecoder().decode(file.bytes)]))
    for (const name of ['results.json', 'checklist.json']) {
      expect(JSON.parse(files.get(name) ?? '').cautions, name).toEqual(CAUTIONS)
    }
    expectCautions(new TextDecoder().decode(makeReadme(content, 'fingerprint', []).bytes))
  })

  test('the report, on its first page and in a section of its own', () => {
    const content = makeContent()
    const textOf = (parts: unknown) => JSON.stringify(parts).replaceAll('\\"', '"')
    expectCautions(textOf(makeTitleBlock(content, 'hash')))
    expectCautions(textOf(makeSources(content)))
    expect(textOf(makeSummary(content))).toContain(`Life at survival, ${LIFE_CAUTION_SHORT}`)
  })

  test('each drawing sheet by itself', () => {
    const sheets = drawSheets(skua, results, {
      identity: {
        ownerName: 'Quillmoor Instruments',
        projectName: 'Skua',
        title: 'Scanning head',
        partNumber: '',
        revisionLabel: 'B',
        issuedOn: null,
        status: 'early review',
        createdBy: '',
        reviewedBy: [],
        loosenedBy: [],
        revisions: [],
        approvedBy: [],
      },
      units: FILE_UNITS,
      palette: PRINT_PALETTE,
      size: null,
    })
    expect(sheets.length).toBeGreaterThan(1)
    for (const sheet of sheets) {
      const texts = [...toSvg(sheet, 'mm').matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text ?? '')
      expectCautions(texts.join(' '))
    }
  })

  test('the page of the catalogue and the README', () => {
    expectCautions(makeReferencePage())
    expectCautions(readFileSync('README.md', 'utf8'))
  })
})

describe('life figures', () => {
  const dynamic = results.bends.filter((bend) => bend.survivalLifeCycles !== null)

  test('carry the caution in the results themselves, and name the relation as quoted', () => {
    expect(dynamic.length).toBeGreaterThan(0)
    for (const bend of dynamic) {
      expect(bend.cautions).toContain(LIFE_CAUTION)
      expect(bend.cautions.join(' ')).toContain('quoted from ANSI/VITA 51.1')
    }
    const lives = results.headlineQuantities.filter(({ quantity }) => quantity?.unit === 'cycles')
    expect(lives.map(({ label }) => label)).toEqual([`Shortest life, ${LIFE_CAUTION_SHORT}`])
  })

  test('are quoted with the source that says how far it is known, in JSON too', () => {
    const { sources } = JSON.parse(runEvaluateCommand([SKUA, '--json'], '2026-11-23').text)
    expect(sources.fatigueDuctility).toEqual({
      citation: expect.stringContaining('as quoted by'),
      kind: 'quoted',
    })
    for (const { kind } of Object.values<{ kind: string }>(sources)) {
      expect(Object.values<string>(SOURCE_KINDS)).toContain(kind)
    }
  })

  test('say so in the report of the command, beside each of them', () => {
    const lines = runEvaluateCommand([SKUA], '2026-11-23').text.split('\n')
    const figures = lines.filter((line) => /^ +(median life|life at)/.test(line))
    expect(figures.length).toBeGreaterThan(1)
    for (const line of figures) expect(line).toContain(LIFE_CAUTION_SHORT)
  })

  test('say so on the axis of the picture', () => {
    for (const bend of dynamic) {
      const picture = drawLifePlot(bend, 4, {
        ...makeOptions(skua),
        document: makeDocument(),
        widthPx: 480,
        heightPx: 320,
      })
      expect(toSvg(picture ?? neverDrawn())).toContain(`cycles to failure, ${LIFE_CAUTION_SHORT}`)
    }
  })
})

function neverDrawn(): never {
  throw new Error('no picture')
}
