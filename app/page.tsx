import type { Metadata } from 'next'
import Link from 'next/link'
import { paths } from '@/lib/addresses'
import { getHome, MAX_ROWS_ON_PAGE, searchReviews, type WaitView } from '@/lib/data'
import { countOf } from '@/lib/engine/units'
import { inPageTurn } from '@/lib/server'
import { LeadCounts } from './_components/home/lead-counts'
import { SearchForm } from './_components/home/search-form'
import { SearchResults } from './_components/home/search-results'
import { STAGE_WORDS } from './_components/review/words'
import { requireActor } from './_components/shell/require-actor'
import { LinkButton } from './_components/ui/button'
import { EmptyState, Notice } from './_components/ui/notices'
import { PageLinks } from './_components/ui/page-links'
import { readPageNumber } from './_components/ui/page-number'
import { PageHead } from './_components/ui/section'
import { Timestamp } from './_components/ui/timestamp'

export const metadata: Metadata = { title: 'Waiting for me' }

/** A row of links that is still looked through. Our choice. */
const MOST_PROJECTS_OFFERED = 12

interface HomePageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>
}

/** What an entry is about, by the part of the revision that it leads to. */
const ABOUT_WORDS: Readonly<Record<string, string>> = {
  threads: 'threads',
  actions: 'actions',
  checklist: 'checklist',
  proposals: 'proposed changes',
  'sign-off': 'moves and signatures',
}

export default async function HomePage({ searchParams }: HomePageProps) {
  const actor = await requireActor(paths.home())
  const asked = await searchParams
  const find = readWord(asked.find).slice(0, 100)
  if (find !== '') {
    return (
      <>
        <PageHead title="Found" over={<Link href={paths.home()}>Waiting for me</Link>} />
        <SearchForm text={find} />
        <SearchResults result={await searchReviews(actor, find)} text={find} />
      </>
    )
  }
  const [page, ledPage] = [readPageNumber(asked.page), readPageNumber(asked.led)]
  const { waits, leadCounts, notWorkedOut } = await inPageTurn(actor, () => getHome(actor, ledPage))
  const filter = { project: readWord(asked.project), about: readWord(asked.about) }
  const shown = waits.filter(
    ({ projectId, target }) =>
      (filter.project === '' || projectId === filter.project) && (filter.about === '' || target.tab === filter.about),
  )
  return (
    <>
      <PageHead title="Waiting for me" under="Oldest first, each with the reason and the next step." />
      <SearchForm text="" />
      {waits.length > 0 && <WaitFilters waits={waits} filter={filter} />}
      {waits.length === 0 && (
        <EmptyState>
          Nothing is waiting for you. <Link href={paths.projects()}>Your projects</Link> show the state of every
          revision.
        </EmptyState>
      )}
      {waits.length > 0 && shown.length === 0 && (
        <EmptyState>
          Nothing of this kind waits for you. <Link href={paths.home()}>Show all {waits.length}</Link>.
        </EmptyState>
      )}
      {shown.length > 0 && (
        <ol start={(page - 1) * MAX_ROWS_ON_PAGE + 1}>
          {shown.slice((page - 1) * MAX_ROWS_ON_PAGE, page * MAX_ROWS_ON_PAGE).map((wait) => (
            <Wait key={`${wait.revisionId} ${wait.target.tab} ${wait.target.id ?? ''} ${wait.reason}`} wait={wait} />
          ))}
        </ol>
      )}
      <PageLinks
        label="Pages of what waits"
        page={page}
        total={shown.length}
        hrefOf={(n) => paths.home({ ...filter, page: String(n) })}
      />
      {notWorkedOut > 0 && (
        <Notice>
          {notWorkedOut === 1 ? 'One revision is' : `${notWorkedOut} revisions are`} missing here: where{' '}
          {notWorkedOut === 1 ? 'it stands is' : 'they stand is'} being worked out. Reload the page in a minute.
        </Notice>
      )}
      <LeadCounts rows={leadCounts.rows} />
      <PageLinks
        label="Pages of revisions you lead"
        page={ledPage}
        total={leadCounts.total}
        hrefOf={(n) => paths.home({ ...filter, led: String(n) })}
      />
    </>
  )
}

function Wait({ wait }: { wait: WaitView }) {
  return (
    <li className="wait">
      <span className="small muted">
        since <Timestamp at={wait.since} dateOnly />
      </span>
      <div>
        <p>
          <strong>
            {wait.projectName}, revision {wait.revisionLabel}
          </strong>{' '}
          <span className="muted">{STAGE_WORDS[wait.stage]}</span>
        </p>
        <p>{wait.reason}</p>
      </div>
      <LinkButton href={paths.target(wait.projectId, wait.revisionId, wait.target)}>{wait.nextAct}</LinkButton>
    </li>
  )
}

interface WaitFiltersProps {
  waits: readonly WaitView[]
  filter: { readonly project: string; readonly about: string }
}

/** Of a lead's hundreds, those in which most waits, and the one that is chosen; in the order of the list. */
function findBusiest(waits: readonly WaitView[], chosen: string): readonly (readonly [string, string])[] {
  const counts = new Map<string, number>()
  for (const { projectId } of waits) counts.set(projectId, (counts.get(projectId) ?? 0) + 1)
  const busiest = [...counts].sort(([, one], [, other]) => other - one).slice(0, MOST_PROJECTS_OFFERED)
  const offered = new Set([...busiest.map(([id]) => id), chosen])
  const names = new Map(waits.map(({ projectId, projectName }) => [projectId, projectName]))
  return [...names].filter(([id]) => offered.has(id))
}

/** Links, so that a filter lives in the address; each with how much of what waits it leaves. */
function WaitFilters({ waits, filter }: WaitFiltersProps) {
  const projects = findBusiest(waits, filter.project)
  const others = new Set(waits.map(({ projectId }) => projectId)).size - projects.length
  const tabs = [...new Set(waits.map(({ target }) => target.tab))]
  const count = (project: string, about: string) =>
    waits.filter(
      (wait) => (project === '' || wait.projectId === project) && (about === '' || wait.target.tab === about),
    ).length
  return (
    <nav aria-label="Filter" className="no-print">
      {projects.length > 1 && (
        <p className="filter-row">
          <FilterLink text="every project" filter={{ ...filter, project: '' }} isOn={filter.project === ''} />
          {projects.map(([id, name]) => (
            <FilterLink
              key={id}
              text={`${name} ${count(id, filter.about)}`}
              filter={{ ...filter, project: id }}
              isOn={filter.project === id}
            />
          ))}
          {others > 0 && <span className="muted">and {countOf(others, 'more project')}</span>}
        </p>
      )}
      {tabs.length > 1 && (
        <p className="filter-row">
          <FilterLink text="everything" filter={{ ...filter, about: '' }} isOn={filter.about === ''} />
          {tabs.map((tab) => (
            <FilterLink
              key={tab}
              text={`${ABOUT_WORDS[tab] ?? tab} ${count(filter.project, tab)}`}
              filter={{ ...filter, about: tab }}
              isOn={filter.about === tab}
            />
          ))}
        </p>
      )}
    </nav>
  )
}

function FilterLink({ text, filter, isOn }: { text: string; filter: WaitFiltersProps['filter']; isOn: boolean }) {
  return (
    <Link href={paths.home(filter)} aria-current={isOn ? 'true' : undefined}>
      {text}
    </Link>
  )
}

function readWord(value: string | string[] | undefined): string {
  return typeof value === 'string' ? value.trim() : ''
}
