import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { zipSync } from 'fflate'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { runEvaluateCommand } from '@/lib/cli/evaluate-command'
import { type Design, type Evaluation, MAX_DESIGN_CHARACTERS } from '@/lib/engine'
import type { FlexTestRow } from '@/lib/engine/flex-tests'
import { FLEX_TEST_TABLE, writeTable } from '@/lib/fabrication'
import { writeCsv, writeXlsx } from '@/lib/spreadsheet'
import { makeRows } from '@/test/unit/flex-tests/rows'

const TIMEOUT_MS = 60_000
let folder = ''

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'evaluate-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function run(...options: string[]) {
  const { status, text, problem } = runEvaluateCommand(options, '2026-11-23')
  return { status, stdout: text, stderr: problem }
}

function writeDesign(name: string, change: (design: Design) => void): string {
  const design = JSON.parse(readFileSync('seed/designs/pipit-rev-a.json', 'utf8')) as Design
  change(design)
  const file = join(folder, name)
  writeFileSync(file, JSON.stringify(design))
  return file
}

describe('evaluate command', () => {
  test('a design that meets everything ends with 0 and a report with aligned columns', () => {
    const { status, stdout } = run('seed/designs/pipit-rev-a.json', '--on', '2026-11-23')
    expect(status).toBe(0)
    const lines = stdout.split('\n')
    expect(lines[0]).toBe('Pipit chest patch, revision A')
    const rule = lines.findIndex((line) => line.startsWith('----'))
    const ends = [...(lines[rule] ?? '').matchAll(/-(?= |$)/g)].map(({ index }) => index)
    // Thickness, a right-aligned column, ends where its rule ends.
    expect(lines[rule + 2]?.slice(0, (ends[3] ?? 0) + 1)).toMatch(/132\.9$/)
    expect(stdout).toContain('Bend round the housing')
    expect(stdout).toContain('qualify by test')
  })

  test.each(['2027-02-30', '2027-13-01', '2026-2-3', 'tomorrow', '2025-02-29'])('--on %s is no calendar day', (day) => {
    const { status, stderr } = run('seed/designs/pipit-rev-a.json', '--on', day)
    expect(status).toBe(2)
    expect(stderr).toContain(`--on: "${day}" is not a calendar day`)
  })

  test('a file that is not UTF-8 is refused with the position of the byte', () => {
    const file = join(folder, 'latin.json')
    writeFileSync(file, Buffer.from('{"name":"Pi\xe9zo"}', 'latin1'))
    expect(run(file)).toMatchObject({ status: 2, stderr: expect.stringContaining('byte 12') })
  })

  test('a key that is given twice is refused with its path', () => {
    const file = join(folder, 'twice.json')
    writeFileSync(
      file,
      readFileSync('seed/designs/pipit-rev-a.json', 'utf8').replace('"brief"', '"name": "Other", "brief"'),
    )
    expect(run(file)).toMatchObject({ status: 2, stderr: expect.stringContaining('name: is given twice') })
  })

  test('a design with a concern ends with 1 and says which', () => {
    const { status, stdout } = run('seed/designs/skua-rev-a.json')
    expect(status).toBe(1)
    expect(stdout).toMatch(/FAILS\s+fatigue-life/)
  })

  test('a design that lacks an input is not all met', () => {
    const file = writeDesign('no-use.json', (design) => {
      for (const bend of design.bends) bend.use = null
    })
    const { status, stdout } = run(file)
    expect(status).toBe(1)
    expect(stdout).toContain('Missing: use of Bend round the housing')
  })

  test('--json gives the results that the engine gives', () => {
    const { status, stdout } = run('seed/designs/skua-rev-b.json', '--json')
    expect(status).toBe(1)
    const evaluation = JSON.parse(stdout) as Evaluation
    expect(evaluation.engineVersion).toMatch(/^\d+\.\d+\.\d+$/)
    expect(evaluation.bends.map(({ bendId }) => bendId)).toEqual(['hinge', 'fold'])
  })

  test('--schema prints the JSON Schema', () => {
    const { status, stdout } = run('--schema')
    expect(status).toBe(0)
    expect(JSON.parse(stdout)).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      required: expect.arrayContaining(['construction', 'bends']),
    })
  })

  test('every bad field is named by its path, and nothing is printed as a result', () => {
    const file = writeDesign('bad.json', (design) => {
      const [layer] = design.construction.layers
      const [bend] = design.bends
      if (layer === undefined || bend === undefined) throw new Error('the design lost its parts')
      layer.thicknessUm = -12
      bend.insideRadiusMm = 0
    })
    const { status, stdout, stderr } = run(file)
    expect(status).toBe(2)
    expect(stdout).toBe('')
    expect(stderr).toContain('construction.layers[0].thicknessUm: must be greater than 0 um')
    expect(stderr).toContain('bends[0].insideRadiusMm: must be greater than 0 mm')
    expect(stderr).toContain('3 problems')
  })

  test.each([
    [
      'an unknown material',
      (design: Design) => Object.assign(design.construction.layers[0] ?? {}, { materialId: 'unobtainium' }),
      'no material "unobtainium"',
    ],
    [
      'a layer in no zone',
      (design: Design) => {
        for (const zone of design.construction.zones) zone.presence.splice(0, 1)
      },
      'is in no zone',
    ],
    [
      'a bend in a rigid zone',
      (design: Design) => Object.assign(design.bends[0] ?? {}, { zoneId: 'electronics' }),
      'bends belong in flex zones',
    ],
  ])('%s is refused with its reason', (name, change, reason) => {
    const { status, stderr } = run(writeDesign(`${name}.json`, change))
    expect(status).toBe(2)
    expect(stderr).toContain(reason)
  })

  test('files that are no design documents are refused with a plain reason', () => {
    const zip = join(folder, 'renamed.json')
    writeFileSync(zip, zipSync({ 'design.json': new TextEncoder().encode('{}') }))
    const large = join(folder, 'large.json')
    writeFileSync(large, `{"name": "${'x'.repeat(5_000_000)}"}`)
    const text = join(folder, 'text.json')
    writeFileSync(text, 'not json')
    for (const [file, reason] of [
      [zip, 'ZIP archive'],
      [large, `at most ${MAX_DESIGN_CHARACTERS}`],
      [text, 'not JSON'],
      [join(folder, 'absent.json'), 'no such file'],
      [folder, 'is a folder'],
    ] as const) {
      const { status, stdout, stderr } = run(file)
      expect({ file, status, stdout }).toEqual({ file, status: 2, stdout: '' })
      expect(stderr).toContain(reason)
    }
  })

  test('wrong arguments end with 2 and the usage', () => {
    expect(run()).toMatchObject({ status: 2, stderr: expect.stringContaining('npm run evaluate') })
    expect(run('--frobnicate')).toMatchObject({ status: 2, stderr: expect.stringContaining('--frobnicate') })
    expect(run('seed/designs/pipit-rev-a.json', '--on', '2026-13-45')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('2026-13-45'),
    })
    expect(run('--help')).toMatchObject({ status: 0, stdout: expect.stringContaining('Exit status') })
  })

  test('profiles are laid over the catalogue: the strictest of several, each named with what it changes', () => {
    const file = 'seed/designs/skua-rev-b.json'
    const plain = run(file).stdout
    const space = run(file, '--profile', 'aerospace-space').stdout
    expect(plain).not.toContain('profiles:')
    expect(plain).not.toContain('because of profile')
    expect(space).toContain('profiles: Aerospace and space')
    expect(space.replaceAll(/\s+/g, ' ')).toContain('because of profile Aerospace and space')
    expect(space).toContain('profile-fields')
    const both = run(file, '--profile', 'consumer-folded-once', '--profile', 'aerospace-space', '--json')
    const other = run(file, '--profile', 'aerospace-space', '--profile', 'consumer-folded-once', '--json')
    expect(both.stdout).toBe(other.stdout)
    expect(JSON.parse(both.stdout).profiles).toHaveLength(2)
    expect(run(file, '--profile', 'toy')).toMatchObject({ status: 2, stderr: expect.stringContaining('"toy"') })
  })

  test('as a program it prints to the right stream and sets the exit status', { timeout: TIMEOUT_MS }, () => {
    const start = (...options: string[]) =>
      spawnSync(process.execPath, ['--import', 'tsx', '--conditions=react-server', 'lib/cli/evaluate.ts', ...options], {
        encoding: 'utf8',
        maxBuffer: 50_000_000,
      })
    const concern = start('seed/designs/skua-rev-a.json')
    expect(concern).toMatchObject({ status: 1, stderr: '' })
    expect(concern.stdout).toContain('Skua scanning head, revision A')
    const absent = start(join(folder, 'absent.json'))
    expect(absent).toMatchObject({ status: 2, stdout: '' })
    expect(absent.stderr).toContain('no such file')
  })
})

describe('own flex tests out of a file', () => {
  /** The circuit of the hinge of Skua revision B: foil 12 µm, 63.8 µm thick, 17 mm one way. */
  const ROWS: readonly FlexTestRow[] = makeRows({
    foilUm: 12,
    thicknessUm: 63.8,
    insideRadiusMm: 17,
    set: 'Lot 7',
  }).map((row) => ({ ...row, cycles: row.cycles * 50 }))
  const writeTests = (name: string, change: (cells: (string | number)[][]) => void = () => {}): string => {
    const cells = writeTable(FLEX_TEST_TABLE, ROWS).map((row) => row.map((cell) => cell ?? ''))
    change(cells)
    const file = join(folder, name)
    writeFileSync(file, writeCsv(cells))
    return file
  }
  const columnOf = (title: string) => FLEX_TEST_TABLE.columns.findIndex((column) => column.title === title)
  const lifeOf = (text: string) => /life at .*survival +([^(]+)/.exec(text)?.[1]

  test('stand in place of the defaults, in text and results, and say what they give and where they hold', () => {
    const file = writeTests('lot-7.csv')
    const without = run('seed/designs/skua-rev-b.json').stdout
    const { status, stdout } = run('seed/designs/skua-rev-b.json', '--flex-tests', file)
    expect(status).toBe(1)
    expect(lifeOf(stdout)).not.toBe(lifeOf(without))
    expect(stdout).toContain('life rests on')
    expect(stdout).toContain('from own tests (set Lot 7 of lot-7.csv (workspace), n = 12, 9 failed)')
    expect(stdout).toContain('Bends whose life rests on it: ')
    expect(stdout.replaceAll(/\s+/g, ' ')).toContain('are extrapolated along the fitted line')
    const json = JSON.parse(run('seed/designs/skua-rev-b.json', '--json', '--flex-tests', file).stdout)
    expect(json.bends[0].ownTests[0]).toMatchObject({ set: 'Lot 7', failures: 9 })
    expect(json.flexTests[0].rows).toHaveLength(12)
    expect(without).not.toContain('Flex tests\n')
  })

  test('of an XLSX file are the same', async () => {
    const file = join(folder, 'lot-7.xlsx')
    writeFileSync(file, await writeXlsx('Sheet', writeTable(FLEX_TEST_TABLE, ROWS)))
    const csv = run('seed/designs/skua-rev-b.json', '--flex-tests', writeTests('lot-7.csv')).stdout
    const { stdout } = run('seed/designs/skua-rev-b.json', '--flex-tests', file)
    expect(stdout.replaceAll('lot-7.xlsx', 'lot-7.csv').replaceAll(/\s+/g, ' ')).toBe(csv.replaceAll(/\s+/g, ' '))
  })

  test('that cover no bend say so, and change nothing', () => {
    const file = writeTests('other.csv', (cells) => {
      for (const row of cells.slice(1)) row[columnOf('Foil thickness')] = 35
    })
    const { stdout } = run('seed/designs/skua-rev-b.json', '--flex-tests', file)
    expect(stdout).toContain('No bend rests on this set')
    expect(lifeOf(stdout)).toBe(lifeOf(run('seed/designs/skua-rev-b.json').stdout))
  })

  test.each([
    ['Cycles', 'many', /row 3, Cycles: "many" /],
    ['Cycles', 0, /row 3, Cycles: "0" must be at least 1 cycle/],
    ['Foil', 'copper-of-mine', /row 3, Foil: "copper-of-mine" is not a copper foil of the material library/],
    ['Result', 'cracked', /row 3, Result: "cracked" /],
    ['Specimen', 'S1', /row 3, Specimen: "S1" is in the set already: row 1 is the same specimen/],
    ['Thickness bent', 5, /row 3, Thickness bent: "5" is less than the foil thickness/],
    ['Motion', '', /row 3, Motion: is empty/],
  ])('with %s %s are refused by row, column and reason, and nothing is evaluated', (title, value, said) => {
    const file = writeTests('bad.csv', (cells) => {
      const row = cells[2]
      if (row !== undefined) row[columnOf(title)] = value
    })
    const { status, stdout, stderr } = run('seed/designs/skua-rev-b.json', '--flex-tests', file)
    expect(status).toBe(2)
    expect(stdout).toBe('')
    expect(stderr).toMatch(said)
  })

  test('without a heading, without a row, in no file, or twice under one name are refused', () => {
    const run2 = (...files: string[]) =>
      run('seed/designs/skua-rev-b.json', ...files.flatMap((file) => ['--flex-tests', file]))
    expect(run2(join(folder, 'none.csv')).stderr).toMatch(/none\.csv: no such file/)
    expect(run2(folder).stderr).toContain('is a folder; give a CSV or XLSX file of flex tests')
    const headless = writeTests('headless.csv', (cells) => cells.splice(0, 1))
    expect(run2(headless).stderr).toMatch(/has no heading "Set"/)
    const empty = writeTests('empty.csv', (cells) => cells.splice(1))
    expect(run2(empty).stderr).toContain('holds no specimen')
    const file = writeTests('lot-7.csv')
    expect(run2(file, file).stderr).toContain('two files are named "lot-7.csv"')
  })

  test('with a column that is none name it', () => {
    const file = writeTests('more.csv', (cells) => {
      for (const [at, row] of cells.entries()) row.push(at === 0 ? 'Operator' : 'MT')
    })
    expect(run('seed/designs/skua-rev-b.json', '--flex-tests', file).stdout).toContain('columns left out: "Operator"')
  })
})
