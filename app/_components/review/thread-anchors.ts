import type { RevisionView } from '@/lib/data'
import { callByName } from '@/lib/engine'
import { listTextsOf } from './catalogue-texts'
import type { AnchorOption } from './thread-form'

/** Everything in a revision that a thread may be about, the revision as a whole first. */
export function listAnchors(revision: RevisionView): AnchorOption[] {
  const { design } = revision
  const texts = listTextsOf(revision.template.content)
  return [
    { kind: 'revision', id: '', label: 'the revision as a whole' },
    ...design.bends.map((bend) => ({ kind: 'bend' as const, id: bend.id, label: callByName('bend', bend.name) })),
    ...design.construction.zones.map((zone) => ({
      kind: 'zone' as const,
      id: zone.id,
      label: callByName('zone', zone.name),
    })),
    ...design.construction.layers.map((layer) => ({
      kind: 'layer' as const,
      id: layer.id,
      label: callByName('layer', layer.name),
    })),
    ...revision.artwork.map((file) => ({ kind: 'artwork' as const, id: file.id, label: `artwork ${file.fileName}` })),
    ...revision.items.map((item) => ({
      kind: 'item' as const,
      id: item.itemId,
      label: `item: ${texts[item.itemId]?.question ?? item.itemId}`,
    })),
  ]
}
