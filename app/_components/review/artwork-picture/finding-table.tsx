'use client'

import Link from 'next/link'
import { Button } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { paths } from '@/lib/addresses'
import { digitsOfResultLength, getShownUnit, getUnitSymbol } from '@/lib/engine/units'
import type { PlacedFinding } from './picture-types'

interface FindingTableProps {
  readonly projectId: string
  readonly revisionId: string
  readonly findings: readonly PlacedFinding[]
  readonly chosen: number | null
  readonly onShow: (finding: PlacedFinding) => void
}

/** Everything that the checklist found at a place in the artwork: the picture in words, and the way to each place in it. */
export function FindingTable({ projectId, revisionId, findings, chosen, onShow }: FindingTableProps) {
  const { unit: chosenUnit } = useLengthUnit()
  const unit = getShownUnit('mm', chosenUnit)
  const symbol = getUnitSymbol(unit)
  const columns = {
    number: { head: 'No.', isNumeric: true },
    verdict: { head: 'Verdict' },
    found: { head: 'What was found', isRowHead: true },
    x: { head: 'x', unit: symbol, isNumeric: true },
    y: { head: 'y', unit: symbol, isNumeric: true },
    show: { head: 'Show', isHeadHidden: true },
  } satisfies Columns
  if (findings.length === 0) {
    return <p className="empty">The checklist has found nothing at a place in the artwork.</p>
  }
  return (
    <DataTable label="Findings in the artwork" columns={columns}>
      {findings.map((finding) => (
        <DataRow
          key={finding.key}
          columns={columns}
          cells={{
            number: finding.number,
            verdict: <VerdictMark verdict={finding.verdict} />,
            found: (
              <Link className="font-normal" href={paths.item(projectId, revisionId, finding.itemId)}>
                {finding.summary}
              </Link>
            ),
            x: digitsOfResultLength(finding.atMm[0], 'mm', unit),
            y: digitsOfResultLength(finding.atMm[1], 'mm', unit),
            show: (
              <Button
                weight="quiet"
                aria-current={finding.number === chosen ? 'location' : undefined}
                onPress={() => onShow(finding)}
              >
                Show<span className="sr-only"> finding {finding.number} in the picture</span>
              </Button>
            ),
          }}
        />
      ))}
    </DataTable>
  )
}
