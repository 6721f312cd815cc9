'use client'

import { describeSharing } from '@/app/_components/fabrication/sharing-words'
import { ActionButton } from '@/app/_components/ui/action-button'
import { Timestamp } from '@/app/_components/ui/timestamp'
import type { CompanyPersonView, CompanyRights, ParticipationView } from '@/lib/data'
import { bringToProject, decideParticipation } from '../../actions'
import { SharingForm } from './sharing-form'

const STATE_WORDS: Record<ParticipationView['state'], string> = {
  asked: 'asks you to take part',
  'takes-part': 'you take part',
  declined: 'declined',
  ended: 'ended',
}

interface ParticipationsProps {
  readonly companyId: string
  readonly participations: readonly ParticipationView[]
  readonly people: readonly CompanyPersonView[]
  readonly may: CompanyRights
}

/** Each project that asked: what the company decided, what it shows there, and who of its people is in it. */
export function Participations({ companyId, participations, people, may }: ParticipationsProps) {
  return (
    <ul className="plain-list">
      {participations.map((part) => (
        <li key={part.projectId} className="stack">
          <h3>
            {part.projectName} <span className="muted">{STATE_WORDS[part.state]}</span>
          </h3>
          <History part={part} />
          {part.state === 'takes-part' ? (
            <TakesPart companyId={companyId} part={part} people={people} may={may} />
          ) : (
            may.takePart && (
              <div className="row">
                <Decision companyId={companyId} part={part} decision="take-part" label="Take part" />
                {part.state === 'asked' && (
                  <Decision companyId={companyId} part={part} decision="decline" label="Decline" />
                )}
              </div>
            )
          )}
        </li>
      ))}
    </ul>
  )
}

function History({ part }: { part: ParticipationView }) {
  return (
    <p className="small muted">
      {part.askedBy !== null && (
        <>
          Asked by {part.askedBy.name}, <Timestamp at={part.askedAt} dateOnly />
          {part.askedFor !== '' && `, for ${part.askedFor}`}.{' '}
        </>
      )}
      {part.decidedBy !== null && part.decidedAt !== null && (
        <>
          Decided by {part.decidedBy.name}, <Timestamp at={part.decidedAt} dateOnly />.
        </>
      )}
      {part.state === 'asked' &&
        part.userIds.length > 0 &&
        ' Your people already in it stay; none of your sheets is shown.'}
    </p>
  )
}

interface DecisionProps {
  readonly companyId: string
  readonly part: ParticipationView
  readonly decision: 'take-part' | 'decline' | 'end'
  readonly label: string
}

function Decision({ companyId, part, decision, label }: DecisionProps) {
  return (
    <ActionButton
      action={decideParticipation}
      input={{ companyId, projectId: part.projectId, decision, reason: '', seenVersion: part.version }}
      weight={decision === 'take-part' ? 'strong' : 'plain'}
      {...(decision === 'end'
        ? {
            confirm: {
              title: `Leave ${part.projectName}?`,
              text: 'Your people leave the project and none of your sheets is shown to it. What they wrote stays on record.',
              label: 'Leave the project',
            },
          }
        : {})}
    >
      {label}
    </ActionButton>
  )
}

function TakesPart({
  companyId,
  part,
  people,
  may,
}: Omit<ParticipationsProps, 'participations'> & { part: ParticipationView }) {
  const inProject = people.filter(({ user }) => part.userIds.includes(user.id))
  const others = people.filter(({ user }) => !part.userIds.includes(user.id))
  return (
    <>
      <p>{describeSharing(part.sharing)}.</p>
      <p>
        In the project: {inProject.length === 0 ? 'nobody yet' : inProject.map(({ user }) => user.name).join(', ')}.
      </p>
      {may.takePart && (
        <div className="row">
          {others.map(({ user }) => (
            <ActionButton
              key={user.id}
              action={bringToProject}
              input={{ companyId, projectId: part.projectId, userId: user.id }}
            >
              Bring {user.name} into {part.projectName}
            </ActionButton>
          ))}
          <Decision companyId={companyId} part={part} decision="end" label="Leave the project" />
        </div>
      )}
      {may.share && (
        <details>
          <summary>Change what {part.projectName} sees</summary>
          <SharingForm
            key={part.version}
            companyId={companyId}
            projectId={part.projectId}
            sharing={part.sharing}
            seenVersion={part.version}
          />
        </details>
      )}
    </>
  )
}
