import { listCitations, listTextsOf, listWhatHelps } from '@/app/_components/review/catalogue-texts'
import { Checklist } from '@/app/_components/review/checklist'
import { TemplateNotice } from '@/app/_components/review/template-notice'
import { getSecondFactor, MAX_FILE_BYTES } from '@/lib/data'
import { FIRST_QUESTIONS } from '@/lib/engine/catalogue'
import { loadRevision, type RevisionParams } from '../load-revision'

interface ChecklistPageProps extends RevisionParams {
  searchParams: Promise<{ show?: string | string[] }>
}

export default async function ChecklistPage({ params, searchParams }: ChecklistPageProps) {
  const { projectId, revisionId } = await params
  const { show } = await searchParams
  const { actor, revision } = await loadRevision(projectId, revisionId)
  const factor = await getSecondFactor(actor)
  return (
    <>
      <TemplateNotice revision={revision} />
      <Checklist
        items={revision.items}
        texts={listTextsOf(revision.template.content)}
        citations={listCitations()}
        whatHelps={listWhatHelps(revision.items.map(({ result }) => result))}
        firstQuestions={FIRST_QUESTIONS}
        initialFilter={typeof show === 'string' ? show : 'all'}
        projectId={projectId}
        revisionId={revisionId}
        may={revision.may}
        role={revision.role}
        brief={revision.design.brief}
        threads={revision.threads}
        fabricators={revision.sharedWith}
        maxFileBytes={MAX_FILE_BYTES}
        factor={factor}
      />
    </>
  )
}
