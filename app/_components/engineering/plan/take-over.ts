import type { Design, Features } from '@/lib/engine'
import type { ImportedPlan } from '@/lib/plan/exchange'
import { makeBlankFeature } from '../draft/blank-features'
import { makeFreshId } from '../draft/design-edits'
import { addDrawn, type Owner, planOf, withEdit } from './additions'
import { TOOLS, type Tool } from './tools'

type PlanNode = ImportedPlan['cutOuts'][number][number]

/** Lists whose entries stand for a row of the features, one for each shape. */
const WITH_ROW = {
  coverlayOpenings: { stem: 'Opening', prefix: 'opening' },
  components: { stem: 'Component', prefix: 'component' },
} as const

/**
 * The design with what a drawing brings: an outline takes the place of the present one, all else is added. Bends and rows of the features
 * come with their shapes, with nothing known of them but what is drawn, and holes of one diameter are one row. Stiffeners are layers of the construction, so
 * somebody says which; without one their shapes are left out. One step, and one undo.
 */
export function takeOver(design: Design, imported: ImportedPlan, stiffenerId: string | null): Design {
  let now = design
  if (imported.outline !== null) {
    now = withEdit(now, { act: 'set', field: 'outline', value: [...imported.outline] })
  }
  const draw = (key: Tool['key'], nodes: readonly PlanNode[], owner: Owner) => {
    const tool = TOOLS.find((candidate) => candidate.key === key)
    if (tool !== undefined) now = addDrawn(now, tool, nodes, owner)
  }
  for (const nodes of imported.cutOuts) draw('cutOuts', nodes, { kind: 'none' })
  for (const nodes of imported.dividingLines) draw('dividingLines', nodes, { kind: 'none' })
  for (const nodes of imported.slits) draw('slits', nodes, { kind: 'none' })
  for (const [fromMm, toMm] of imported.bendLines) {
    const nodes = [
      { atMm: fromMm, viaMm: null },
      { atMm: toMm, viaMm: null },
    ]
    draw('bendLines', nodes, { kind: 'new' })
  }
  if (stiffenerId !== null) {
    for (const nodes of imported.stiffeners) draw('stiffeners', nodes, { kind: 'id', id: stiffenerId })
  }
  for (const key of ['coverlayOpenings', 'components'] as const) {
    for (const nodes of imported[key]) {
      const { stem, prefix } = WITH_ROW[key]
      const id = makeFreshId(prefix, now.features[key])
      now = withRow(now, key, makeBlankFeature(key, { id, name: `${stem} ${now.features[key].length + 1}` }))
      draw(key, nodes, { kind: 'id', id })
    }
  }
  const rows = new Map<number | null, string>()
  for (const { atMm, diameterMm } of imported.holes) {
    let id = rows.get(diameterMm)
    if (id === undefined) {
      id = makeFreshId('hole', now.features.holes)
      rows.set(diameterMm, id)
      const blank = makeBlankFeature('holes', { id, name: `Hole ${now.features.holes.length + 1}` })
      now = withRow(now, 'holes', { ...blank, drillMm: diameterMm })
    }
    draw('holes', [{ atMm, viaMm: null }], { kind: 'id', id })
  }
  return now.plan === null ? { ...now, plan: planOf(now) } : now
}

function withRow<K extends 'holes' | 'coverlayOpenings' | 'components'>(
  design: Design,
  key: K,
  row: Features[K][number],
): Design {
  return {
    ...design,
    features: {
      ...design.features,
      none: design.features.none.filter((marked) => marked !== key),
      [key]: [...design.features[key], row],
    },
  }
}
