import type { RevisionView } from '@/lib/data'
import { listDesignAnchors, nameInList } from '@/lib/review'
import { listTextsOf } from './catalogue-texts'
import type { AnchorOption } from './thread-form'

/** Everything in a revision that a thread may be about, the revision as a whole first. */
export function listAnchors(revision: RevisionView): AnchorOption[] {
  const { design } = revision
  const texts = listTextsOf(revision.template.content)
  const places = listDesignAnchors(design).flatMap((anchor) =>
    anchor.kind === 'proposal' ? [] : [{ kind: anchor.kind, id: anchor.id, label: nameInList(anchor) }],
  )
  const isValue = ({ kind }: AnchorOption) => kind === 'value' || kind === 'parameter'
  const [named, others] = [places.filter((place) => !isValue(place)), places.filter(isValue)]
  return [
    { kind: 'revision', id: '', label: 'the revision as a whole' },
    ...named,
    ...revision.artwork.map((file) => ({ kind: 'artwork' as const, id: file.id, label: `artwork ${file.fileName}` })),
    ...revision.items.map((item) => ({
      kind: 'item' as const,
      id: item.itemId,
      label: `item: ${texts[item.itemId]?.question ?? item.itemId}`,
    })),
    ...others,
  ]
}
