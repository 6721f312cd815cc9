import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import {
  addBend,
  addZone,
  duplicateLayer,
  duplicateZone,
  insertLayer,
  makeFreshId,
  moveLayer,
  moveZone,
  removeLayer,
  setPresence,
  setZoneCoverage,
  updateLayer,
} from '@/app/_components/engineering/draft/design-edits'
import { DRAFT_PAGES, shareDraft } from '@/app/_components/engineering/draft/draft-pages'
import {
  isDraftChanged,
  listChangedParts,
  makeDraft,
  reduceDraft,
  takeUpDraft,
} from '@/app/_components/engineering/draft/draft-state'
import { type Design, LAYER_KINDS, makeLayerOfKind, makePresence, parseDesign } from '@/lib/engine'
import { findStartingConstruction } from '@/lib/engine/starting-constructions'

function makeDesign(): Design {
  const starting = findStartingConstruction('four-layer-inner-flex')
  if (starting === null) throw new Error('the starting construction exists')
  return starting.makeDesign('Draft')
}

const setThickness = (id: string, thicknessUm: number) => (design: Design) =>
  updateLayer(design, id, (layer) => ({ ...layer, thicknessUm }))

describe('draft of a design', () => {
  const design = makeDesign()
  const layerId = design.construction.layers[0]?.id ?? ''
  const thicknessOf = (present: Design) => present.construction.layers[0]?.thicknessUm

  test('keystrokes in one field are one step of undo; another field is the next', () => {
    let state = makeDraft(design, 3)
    state = reduceDraft(state, { type: 'edit', key: 'a', change: setThickness(layerId, 1) })
    state = reduceDraft(state, { type: 'edit', key: 'a', change: setThickness(layerId, 12) })
    state = reduceDraft(state, { type: 'edit', key: 'b', change: setThickness(layerId, 50) })
    expect(state.past).toHaveLength(2)
    state = reduceDraft(state, { type: 'undo' })
    expect(thicknessOf(state.design)).toBe(12)
    state = reduceDraft(state, { type: 'undo' })
    expect(state.design).toBe(design)
    state = reduceDraft(state, { type: 'redo' })
    expect(thicknessOf(state.design)).toBe(12)
  })

  test('coming back to a field begins a new step', () => {
    let state = makeDraft(design, 3)
    state = reduceDraft(state, { type: 'edit', key: 'a', change: setThickness(layerId, 12) })
    state = reduceDraft(state, { type: 'settle' })
    state = reduceDraft(state, { type: 'edit', key: 'a', change: setThickness(layerId, 50) })
    expect(thicknessOf(reduceDraft(state, { type: 'undo' }).design)).toBe(12)
  })

  test('undo makes fields drop the text they hold', () => {
    let state = makeDraft(design, 3)
    state = reduceDraft(state, { type: 'edit', key: 'a', change: setThickness(layerId, 1) })
    state = reduceDraft(state, { type: 'misread', key: 'x', reason: 'is not a number' })
    const { epoch } = state
    state = reduceDraft(state, { type: 'undo' })
    expect(state.epoch).toBe(epoch + 1)
    expect(state.misread).toEqual({})
  })

  test('typing back what is stored leaves nothing to save, unread text does', () => {
    let state = makeDraft(design, 3)
    const before = thicknessOf(design) ?? 0
    state = reduceDraft(state, { type: 'edit', key: 'a', change: setThickness(layerId, before + 1) })
    expect(isDraftChanged(state)).toBe(true)
    state = reduceDraft(state, { type: 'edit', key: 'a', change: setThickness(layerId, before) })
    expect(isDraftChanged(state)).toBe(false)
    state = reduceDraft(state, { type: 'misread', key: 'x', reason: 'is not a number' })
    expect(isDraftChanged(state)).toBe(true)
  })

  test('somebody else saved: keeping mine moves the version and loses nothing, taking theirs can be undone', () => {
    const theirs = { ...design, name: 'Theirs' }
    let state = makeDraft(design, 3)
    state = reduceDraft(state, { type: 'edit', key: 'a', change: setThickness(layerId, 77) })
    const mine = state.design
    const kept = reduceDraft(state, { type: 'rebase', stored: theirs, version: 4, design: mine })
    expect(kept.design).toBe(mine)
    expect(kept.seenVersion).toBe(4)
    expect(isDraftChanged(kept)).toBe(true)
    const taken = reduceDraft(state, { type: 'rebase', stored: theirs, version: 4, design: theirs })
    expect(taken.design).toBe(theirs)
    expect(isDraftChanged(taken)).toBe(false)
    expect(reduceDraft(taken, { type: 'undo' }).design).toBe(mine)
  })

  test('saving keeps the steps of undo', () => {
    let state = makeDraft(design, 3)
    state = reduceDraft(state, { type: 'edit', key: 'a', change: setThickness(layerId, 77) })
    state = reduceDraft(state, { type: 'saved', design: state.design, version: 4 })
    expect(isDraftChanged(state)).toBe(false)
    expect(state.seenVersion).toBe(4)
    expect(reduceDraft(state, { type: 'undo' }).design).toBe(design)
  })
})

describe('edits of a construction', () => {
  const design = makeDesign()
  const { layers, zones } = design.construction

  test('a new layer joins the zones of the layer above it, and the design stays valid', () => {
    const id = makeFreshId('layer', layers)
    const layer = makeLayerOfKind(design, 'adhesive', { id, name: 'New', from: null })
    const edited = insertLayer(design, 0, layer)
    expect(edited.construction.layers[1]?.id).toBe(id)
    const upper = layers[0]?.id
    for (const zone of edited.construction.zones) {
      const has = (layerId: string | undefined) => zone.presence.some((presence) => presence.layerId === layerId)
      expect(has(id)).toBe(has(upper))
    }
    expect(parseDesign(edited).ok).toBe(true)
  })

  test('a removed layer leaves every zone', () => {
    const id = layers[0]?.id ?? ''
    const edited = removeLayer(design, id)
    expect(edited.construction.layers.some((layer) => layer.id === id)).toBe(false)
    expect(edited.construction.zones.some((zone) => zone.presence.some((presence) => presence.layerId === id))).toBe(
      false,
    )
  })

  test('a copy has an id and name of its own and is where its original is', () => {
    const edited = duplicateLayer(duplicateLayer(design, 1), 1)
    const parsed = parseDesign(edited)
    expect(parsed.ok ? [] : parsed.issues).toEqual([])
    expect(new Set(edited.construction.layers.map((layer) => layer.name)).size).toBeGreaterThanOrEqual(
      new Set(layers.map((layer) => layer.name)).size + 2,
    )
  })

  test('moving changes the order and nothing else', () => {
    const edited = moveLayer(design, 0, 2)
    expect(edited.construction.layers[2]).toBe(layers[0])
    expect(edited.construction.zones).toBe(zones)
  })

  test('presence and copper share of a zone', () => {
    const zoneId = zones[0]?.id ?? ''
    const conductor = layers.find((layer) => layer.kind === 'conductor')
    const layerId = conductor?.id ?? ''
    const absent = setPresence(design, zoneId, layerId, false)
    expect(absent.construction.zones[0]?.presence.some((presence) => presence.layerId === layerId)).toBe(false)
    const present = setZoneCoverage(setPresence(absent, zoneId, layerId, true), zoneId, layerId, 0.25)
    expect(present.construction.zones[0]?.presence.find((presence) => presence.layerId === layerId)).toEqual(
      makePresence(layerId, 0.25),
    )
  })

  test('zones change places, are inserted and are copied with their layers', () => {
    const [first, second] = zones
    if (first === undefined || second === undefined) throw new Error('the construction has two zones')
    const names = (edited: Design) => edited.construction.zones.map(({ name }) => name)
    expect(names(moveZone(design, 0, 1)).slice(0, 2)).toEqual([second.name, first.name])
    expect(names(addZone(design, 0))).toHaveLength(zones.length + 1)
    expect(names(addZone(design, 0))[2]).toBe(second.name)
    const copied = duplicateZone({ ...design, assumed: [`zones.${first.id}.presence`] }, 0)
    const copy = copied.construction.zones[1]
    expect(copy).toMatchObject({
      name: `${first.name} copy`,
      kind: first.kind,
      presence: first.presence,
      statedThicknessUm: null,
    })
    expect(copied.assumed).toContain(`zones.${copy?.id}.presence`)
    const parsed = parseDesign(copied)
    expect(parsed.ok ? [] : parsed.issues).toEqual([])
  })

  test('a new zone and a new bend are valid as they come', () => {
    const parsed = parseDesign(addBend(addZone(design)))
    expect(parsed.ok ? [] : parsed.issues).toEqual([])
  })

  test.each(LAYER_KINDS)('a layer can become %s and still has a material that suits it', (kind) => {
    const first = layers[0]
    if (first === undefined) throw new Error('the construction has layers')
    const changed = makeLayerOfKind(design, kind, { id: first.id, name: first.name, from: first })
    const edited = updateLayer(design, first.id, () => changed)
    const parsed = parseDesign(edited)
    const own = parsed.ok ? [] : parsed.issues.filter((issue) => issue.path[1] === 'layers')
    expect(own).toEqual([])
  })
})

describe('one draft for all pages of the design', () => {
  const design = makeDesign()
  const layerId = design.construction.layers[0]?.id ?? ''
  const edited = reduceDraft(makeDraft(design, 3), { type: 'edit', key: 'a', change: setThickness(layerId, 12) })

  test('the next page takes up the edits with their steps of undo', () => {
    const next = takeUpDraft(edited, design, 3)
    expect(next.design).toBe(edited.design)
    expect(reduceDraft(next, { type: 'undo' }).design).toBe(design)
    expect(listChangedParts(next)).toEqual(['construction'])
  })

  test('edits stay on the version that they were made on, and a draft without any shows what is stored by now', () => {
    const newer = { ...design, name: 'Renamed meanwhile' }
    expect(takeUpDraft(edited, newer, 4)).toMatchObject({ seenVersion: 3, design: { name: design.name } })
    expect(takeUpDraft(makeDraft(design, 3), newer, 4)).toEqual(makeDraft(newer, 4))
    expect(takeUpDraft(null, newer, 4)).toEqual(makeDraft(newer, 4))
    // What this browser saved itself may be newer than what the page was given.
    const saved = reduceDraft(edited, { type: 'saved', design: edited.design, version: 5 })
    expect(takeUpDraft(saved, newer, 4).seenVersion).toBe(5)
  })

  test('an entry that could not be read stays behind with its field', () => {
    const misread = reduceDraft(edited, { type: 'misread', key: 'x', reason: 'is not a number' })
    expect(takeUpDraft(misread, design, 3)).toMatchObject({ misread: {}, design: edited.design })
  })

  test('the pages that share it are those of their folder, and of one revision', () => {
    const folder = 'app/projects/[projectId]/revisions/[revisionId]/(design)'
    const pages = readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
      entry.isDirectory() ? [entry.name] : [],
    )
    expect(pages.toSorted()).toEqual([...DRAFT_PAGES].sort())
    expect(shareDraft('/projects/p/revisions/a/bends', '/projects/p/revisions/a/brief')).toBe(true)
    expect(shareDraft('/projects/p/revisions/a/bends', '/projects/p/revisions/b/brief')).toBe(false)
    expect(shareDraft('/projects/p/revisions/a/bends', '/projects/p/revisions/a/checklist')).toBe(false)
    expect(shareDraft('/projects/p/revisions/a', '/projects/p/revisions/a')).toBe(false)
  })
})
