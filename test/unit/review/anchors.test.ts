import { describe, expect, it } from 'vitest'
import { holdsEveryWord } from '@/app/_components/ui/select-field'
import { ANCHOR_KINDS, callAnchor, listDesignAnchors, nameInList } from '@/lib/review'
import { readDemoDesign } from '../fabrication/designs'

describe('places that can be asked about', () => {
  const design = readDemoDesign('skua-rev-b')
  const places = listDesignAnchors(design)
  const labelOf = (kind: string, id: string) => places.find((place) => place.kind === kind && place.id === id)?.label

  it('are told apart, have words, and fit the form', () => {
    expect(new Set(places.map(({ kind, id }) => `${kind}:${id}`)).size).toBe(places.length)
    expect(places.filter(({ label }) => label.trim() === '' || /undefined|null|\[object/.test(label))).toEqual([])
    expect(places.filter(({ id }) => id === '' || id.length > 250)).toEqual([])
    // Files, items and the whole belong to the review, not to the design.
    const others = ANCHOR_KINDS.filter((kind) => !['revision', 'item', 'artwork', 'proposal'].includes(kind))
    expect([...new Set(places.map(({ kind }) => kind))].toSorted()).toEqual(others.toSorted())
  })

  it('hold every layer, zone, bend, feature and note', () => {
    const count = (kind: string) => places.filter((place) => place.kind === kind).length
    expect(count('layer')).toBe(design.construction.layers.length)
    expect(count('zone')).toBe(design.construction.zones.length)
    expect(count('bend')).toBe(design.bends.length)
    expect(count('note')).toBe(design.plan?.notes.length)
    expect(count('feature')).toBeGreaterThanOrEqual(design.features.holes.length + design.features.conductors.length)
  })

  it('values are named with what they belong to', () => {
    const [bend] = design.bends
    const [layer] = design.construction.layers
    expect(labelOf('value', 'brief/operatingMaxDegC')).toMatch(/^brief: .*temperature/)
    expect(labelOf('value', `bends/${bend?.id}/insideRadiusMm`)).toBe(`bend ${bend?.name} inside radius`)
    expect(labelOf('value', `layers/${layer?.id}/thicknessUm`)).toBeDefined()
    expect(labelOf('value', `bends/${bend?.id}/id`)).toBeUndefined()
    expect(labelOf('value', 'brief/tolerances/outlineMm')).toBeDefined()
    expect(labelOf('parameter', 'annular-ring')).toBe('matrix: Annular ring, minimum')
  })

  it('are found by words in any order', () => {
    const [bend] = design.bends
    const found = (searched: string) => places.map(nameInList).filter((name) => holdsEveryWord(name, searched))
    expect(found(`radius ${bend?.name.toLowerCase()}`)).toContain(`bend ${bend?.name} inside radius`)
    expect(found('zzz')).toEqual([])
    expect(found('')).toHaveLength(places.length)
  })

  it('are named in a sentence with their kind, once', () => {
    expect(callAnchor('bend', 'Hinge')).toBe('bend Hinge')
    expect(callAnchor('feature', 'hole Mounting')).toBe('hole Mounting')
  })
})
