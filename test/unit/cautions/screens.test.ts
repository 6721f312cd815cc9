import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'

/** Acts by which results leave: release, declaration, and downloads of results, package and drawing. */
const ACTS = [
  /action: releaseRevision/,
  /action: declareBuildable/,
  /href=\{paths\.(results|package)\(/,
  /href=\{(pdfPath|`\$\{svgPathOf\})/,
] as const
/** Figures of life, as pages write them. */
const LIFE = /read(Bend|Conductor)Life\(|state\.survivalLife\b/
/** A life written as a bare number, without what it stands for. Points of a curve are within it. */
const BARE_LIFE =
  /(asComputed|asResult|digitsAsComputed|digitsOfResult|inSentence)\((bend|result|conductor|state|own|range)\.(survival|median)LifeCycles|value=\{[\w.]*LifeCycles\}/

function listScreens(): { file: string; text: string }[] {
  return readdirSync('app', { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.tsx'))
    .map((file) => ({ file, text: readFileSync(path.join('app', file), 'utf8') }))
}

test.each(ACTS)('beside %s stand the cautions', (act) => {
  const screens = listScreens().filter(({ text }) => act.test(text))
  expect(screens.length).toBeGreaterThan(0)
  expect(screens.filter(({ text }) => !text.includes('<Cautions />')).map(({ file }) => file)).toEqual([])
})

test('beside every life figure stands its order', () => {
  const screens = listScreens().filter(({ text }) => LIFE.test(text))
  expect(screens.length).toBeGreaterThan(2)
  expect(
    screens.filter(({ text }) => !/<LifeCaution \/>|LIFE_CAUTION_SHORT/.test(text)).map(({ file }) => file),
  ).toEqual([])
})

test('no exit writes a life as a bare number: it may be longer, shorter, or nobody can tell', () => {
  const files = ['app', 'lib/cli', 'lib/package', 'lib/drawing', 'lib/review'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.tsx?$/.test(file))
      .map((file) => path.join(folder, file)),
  )
  expect(files.length).toBeGreaterThan(300)
  expect(files.filter((file) => BARE_LIFE.test(readFileSync(file, 'utf8')))).toEqual([])
})
