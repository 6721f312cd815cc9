import type { Metadata } from 'next'
import Link from 'next/link'
import { COMPARISON_PARTS } from '@/app/_components/review/comparison-parts'
import { ComparisonReport } from '@/app/_components/review/comparison-report'
import { MarkLegend } from '@/app/_components/review/mark-legend'
import { computeOrNotFound, readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageHead } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { type ComparisonView, compareInProject, getProject, listComparable } from '@/lib/data'
import { comparedSchema } from '@/lib/inputs'
import type { InputChange } from '@/lib/review'
import { CompareFilters } from './_components/compare-filters'
import { CompareSides } from './_components/compare-sides'

export const metadata: Metadata = { title: 'Compare' }

type Param = string | string[] | undefined

interface ComparePageProps {
  params: Promise<{ projectId: string }>
  searchParams: Promise<{ from?: Param; to?: Param; show?: Param; area?: Param }>
}

const AREAS: readonly InputChange['area'][] = [
  'name',
  'brief',
  'materials',
  'construction',
  'bends',
  'features',
  'plan',
  'artwork',
]

/** Two contents of a project side by side. Sides and filters stand in the address, so that a view can be passed on. */
export default async function ComparePage({ params, searchParams }: ComparePageProps) {
  const { projectId } = await params
  const asked = await searchParams
  const actor = await requireActor(paths.compare(projectId))
  const project = await readOrNotFound(() => getProject(actor, projectId))
  const options = await listComparable(actor, projectId)
  // Whoever asks for nothing gets the newest revision against the one before it.
  const [newest, previous] = options.filter(({ ref }) => ref.startsWith('revision:'))
  const sides =
    asked.from === undefined && asked.to === undefined && newest !== undefined && previous !== undefined
      ? { from: previous.ref, to: newest.ref }
      : asked
  const from = comparedSchema.safeParse(sides.from)
  const to = comparedSchema.safeParse(sides.to)
  const view =
    from.success && to.success
      ? await computeOrNotFound(actor, () => compareInProject(actor, { projectId, from: from.data, to: to.data }))
      : null
  const part = COMPARISON_PARTS.find((known) => known === asked.show) ?? null
  const area = AREAS.find((known) => known === asked.area) ?? null
  return (
    <>
      <PageHead
        title="Compare"
        over={<Link href={paths.project(projectId)}>{project.name}</Link>}
        under="Revisions as they are, as signed, and as proposed."
      />
      <CompareSides
        projectId={projectId}
        options={options}
        from={typeof sides.from === 'string' ? sides.from : null}
        to={typeof sides.to === 'string' ? sides.to : null}
      />
      {view === null ? (
        <EmptyState>
          {options.length < 2 ? 'There is nothing to compare with yet.' : 'Select two versions to compare.'}
        </EmptyState>
      ) : (
        <>
          <CompareFilters
            part={part}
            area={area}
            counts={countParts(view)}
            areas={AREAS.filter((known) => view.comparison.changes.some((change) => change.area === known))}
          />
          <MarkLegend />
          <ComparisonReport
            comparison={view.comparison}
            questions={view.questions}
            projectId={projectId}
            revisionId={view.to.revisionId}
            part={part}
            area={area}
            before={`Before: ${view.from.label}`}
            after={`After: ${view.to.label}`}
          />
        </>
      )}
    </>
  )
}

function countParts({ comparison }: ComparisonView) {
  return {
    inputs: comparison.changes.length,
    verdicts: comparison.verdicts.length,
    numbers: comparison.numbers.length,
    answers: comparison.answers.length,
  }
}
