import type { Content } from 'pdfmake/interfaces'
import { CAUTIONS, citeRecordedSource, SOURCE_KINDS, SOURCES, type Source, type SourceKey } from '@/lib/engine'
import type { PackageContent } from '../content'
import { level1, makeEmptyPart, makeTable } from './style'

/** Every source that a number of this report rests on. */
export function makeSources({ snapshot }: PackageContent): Content[] {
  const outcomes = (snapshot.evaluation?.results.items ?? []).flatMap((item) => item.outcomes)
  const keys = new Set(
    outcomes.flatMap((o) =>
      o.kind === 'decided' ? [o.limit.sourceKey, o.sourceKey] : o.kind === 'said' ? [o.sourceKey] : [],
    ),
  )
  const rows = [...keys]
    .map((key): [string, Source | null] => [
      citeRecordedSource(key),
      Object.hasOwn(SOURCES, key) ? SOURCES[key as SourceKey] : null,
    ])
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([cited, source]) => [cited, source === null ? '' : SOURCE_KINDS[source.kind], source?.note ?? ''])
  return [
    rows.length === 0
      ? makeEmptyPart(level1('15  Sources'), 'No computed number is recorded.')
      : makeTable(
          [
            { label: 'Source', width: '*' },
            { label: 'Kind', width: 72 },
            { label: 'Note', width: 180 },
          ],
          rows,
          level1('15  Sources'),
        ),
    { stack: [{ text: '16  Cautions', style: 'section' }, { ul: [...CAUTIONS] }], unbreakable: true },
  ]
}
