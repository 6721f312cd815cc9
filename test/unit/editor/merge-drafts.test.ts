import { describe, expect, test } from 'vitest'
import { nameClash } from '@/app/_components/engineering/draft/clash-words'
import { insertLayer, moveLayer, removeLayer, updateLayer } from '@/app/_components/engineering/draft/design-edits'
import { mergeDrafts } from '@/app/_components/engineering/draft/merge-drafts'
import { type Design, makeLayerOfKind, parseDesign } from '@/lib/engine'
import { findStartingConstruction } from '@/lib/engine/starting-constructions'

const starting = findStartingConstruction('four-layer-inner-flex')
if (starting === null) throw new Error('the starting construction exists')
const base = starting.makeDesign('Merge')
const [first, second, third] = base.construction.layers
if (first === undefined || second === undefined || third === undefined) throw new Error('it has layers')
const rename = (design: Design, id: string, name: string) => updateLayer(design, id, (layer) => ({ ...layer, name }))
const resize = (design: Design, id: string, thicknessUm: number) =>
  updateLayer(design, id, (layer) => ({ ...layer, thicknessUm }))
const layerOf = (design: Design, id: string) => design.construction.layers.find((layer) => layer.id === id)

describe('two people change one design', () => {
  test('fields that only one changed are taken from the person who changed them', () => {
    const { merged, clashes } = mergeDrafts(base, rename(base, first.id, 'Cover'), resize(base, first.id, 26))
    expect(layerOf(merged, first.id)).toMatchObject({ name: 'Cover', thicknessUm: 26 })
    expect(clashes).toEqual([])
  })

  test('where both changed one field mine stands and the place is named', () => {
    const { merged, clashes } = mergeDrafts(base, resize(base, first.id, 20), resize(base, first.id, 26))
    expect(layerOf(merged, first.id)?.thicknessUm).toBe(20)
    expect(clashes).toEqual([`construction › layers › ${first.id} › thicknessUm`])
    const [words] = clashes.map((clash) => nameClash(clash, [removeLayer(base, first.id), base]))
    expect(words).toMatch(new RegExp(`${first.name} thickness$`))
  })

  test('a layer that I added stays where I put it, in a list that the other rearranged nothing of', () => {
    const added = makeLayerOfKind(base, 'adhesive', { id: 'layer-new', name: 'New', from: null })
    const { merged } = mergeDrafts(base, insertLayer(base, 1, added), resize(base, third.id, 33))
    expect(merged.construction.layers.map((layer) => layer.id).slice(0, 4)).toEqual([
      first.id,
      second.id,
      'layer-new',
      third.id,
    ])
    expect(layerOf(merged, third.id)?.thicknessUm).toBe(33)
    expect(parseDesign(merged).ok).toBe(true)
  })

  test('a layer that the other removed is gone, also from the zones, if I did not touch it', () => {
    const { merged } = mergeDrafts(base, rename(base, second.id, 'Named'), removeLayer(base, first.id))
    expect(layerOf(merged, first.id)).toBeUndefined()
    expect(layerOf(merged, second.id)?.name).toBe('Named')
    const stillListed = merged.construction.zones.some((zone) => zone.presence.some((at) => at.layerId === first.id))
    expect(stillListed).toBe(false)
  })

  test('a layer that the other removed while I changed it stays, and is named', () => {
    const { merged, clashes } = mergeDrafts(base, resize(base, first.id, 20), removeLayer(base, first.id))
    expect(layerOf(merged, first.id)?.thicknessUm).toBe(20)
    expect(clashes).toEqual([`construction › layers › ${first.id}`])
  })

  test('my new order stands with their changed fields in it', () => {
    const { merged } = mergeDrafts(base, moveLayer(base, 0, 1), resize(base, first.id, 26))
    expect(merged.construction.layers.slice(0, 2).map((layer) => layer.id)).toEqual([second.id, first.id])
    expect(layerOf(merged, first.id)?.thicknessUm).toBe(26)
  })

  test('nothing changed by me gives theirs, nothing by them gives mine', () => {
    const changed = resize(base, first.id, 26)
    expect(mergeDrafts(base, base, changed).merged).toEqual(changed)
    expect(mergeDrafts(base, changed, base).merged).toEqual(changed)
  })
})
