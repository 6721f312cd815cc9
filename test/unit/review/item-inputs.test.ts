import { expect, test } from 'vitest'
import { findFieldWords } from '@/lib/engine'
import { CATALOGUE } from '@/lib/engine/catalogue'
import { compareDesigns, isInputOf, listChangedInputs } from '@/lib/review'
import { makeDesign } from './snapshot-factory'

test('every item rests on inputs that the design has', () => {
  const patterns = CATALOGUE.flatMap(({ id, restsOn }) => restsOn.map((pattern) => ({ id, pattern })))
  const unknown = patterns.filter(
    ({ pattern }) => pattern !== 'artwork' && findFieldWords(pattern.split('.')).node === null,
  )
  expect(unknown).toEqual([])
  // Queries are no part of the design: nothing that is edited reopens that answer.
  expect(CATALOGUE.filter(({ restsOn }) => restsOn.length === 0).map(({ id }) => id)).toEqual(['engineering-queries'])
})

test('a changed foil is an input of the strain in a bend, and none of the packing', () => {
  const path = ['construction', 'layers', 'layer-1', 'thicknessUm']
  expect(isInputOf('bend-strain', path)).toBe(true)
  expect(isInputOf('packing', path)).toBe(false)
})

test('a layer that is added counts for whatever rests on its material', () => {
  expect(isInputOf('stock-materials', ['construction', 'layers', 'layer-9'])).toBe(true)
  expect(isInputOf('electrical-test', ['construction', 'layers', 'layer-9'])).toBe(false)
})

test('a name counts only for items that are about names', () => {
  const path = ['construction', 'layers', 'layer-1', 'name']
  expect(isInputOf('bend-strain', path)).toBe(false)
  expect(isInputOf('layer-names', path)).toBe(true)
})

test("an item of the workspace's own rests on the whole design", () => {
  expect(isInputOf('own-item', ['brief', 'purpose'])).toBe(true)
  expect(isInputOf('own-item', ['artwork'])).toBe(true)
})

test('changed inputs are told in the words of the trade', () => {
  const before = makeDesign()
  const after = makeDesign((design) => {
    design.brief.packingAndHandling = 'trays with desiccant'
    design.brief.whoToAsk = 'Jorun Vey'
  })
  const changes = { design: compareDesigns(before, after), isArtworkChanged: true }
  expect(listChangedInputs('packing', changes)).toEqual([
    expect.stringMatching(/^brief: packing and handling .* to trays with desiccant$/),
  ])
  expect(listChangedInputs('artwork-agreement', changes)).toEqual(['the artwork files changed'])
  expect(listChangedInputs('bend-strain', changes)).toEqual([])
})
