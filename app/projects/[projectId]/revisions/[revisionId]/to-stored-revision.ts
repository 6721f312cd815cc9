import type { StoredRevision } from '@/app/_components/engineering'
import { STAGE_WORDS } from '@/app/_components/review/words'
import type { RevisionView } from '@/lib/data'
import type { Material } from '@/lib/engine'

/** What the engineering pages need of a revision, and why it may not be edited where that is so. */
export function toStoredRevision(revision: RevisionView, ownMaterials: readonly Material[] = []): StoredRevision {
  return {
    revisionId: revision.id,
    label: revision.label,
    design: revision.design,
    designVersion: revision.designVersion,
    evaluation: revision.evaluation,
    limits: revision.limits,
    testedLives: revision.testedLives,
    artworkFacts: revision.artworkFacts,
    checkedLimits: revision.checkedLimits,
    template: revision.template.content,
    ownMaterials,
    mayEdit: revision.may.edit,
    lockedBecause: explainLock(revision),
    proposing: revision.may.propose
      ? {
          projectId: revision.project.id,
          fabricators: revision.sharedWith,
          isFabricator: revision.role === 'fabricator',
        }
      : null,
  }
}

function explainLock(revision: RevisionView): string {
  const { stage, role } = revision
  if (stage === 'released' || stage === 'superseded' || stage === 'withdrawn') {
    return `This revision is ${STAGE_WORDS[stage].toLowerCase()}: it can no longer change. Copy it into a new revision to continue.`
  }
  if (role === 'member' || role === 'lead') {
    return 'This revision cannot be edited in its present stage. A lead engineer may send it back.'
  }
  return 'You can read this page. Members and lead engineers of the project can edit it.'
}
