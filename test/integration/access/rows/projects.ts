import * as data from '@/lib/data'
import { addThrowawayMember } from '../scene'
import { type AccessRow, EVERYBODY, LEADS, PROJECT, READERS, REVIEWERS, UNSEEN } from './row'

/** Projects and people. */
export const PROJECT_ROWS: readonly AccessRow[] = [
  { name: 'listProjects', run: (a) => data.listProjects(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
  { name: 'listWaits', run: (a) => data.listWaits(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
  {
    name: 'createProject',
    run: (a, s) => data.createProject(a, { name: s.projectName, description: '' }),
    reached: 'invalid',
    may: ['admin', ...REVIEWERS, 'outsider'],
    seenBy: 'workspace',
  },
  {
    name: 'changeProject',
    run: (a, s) =>
      data.changeProject(a, {
        projectId: s.team.projectId,
        seenName: 'A name that it never had',
        name: 'Another',
        description: '',
        reason: 'spelling',
      }),
    reached: 'clash',
    may: LEADS,
    seenBy: 'project',
  },
  {
    name: 'archiveProject',
    run: (a, s) => data.archiveProject(a, { projectId: s.team.projectId, isArchived: true, reason: 'done' }),
    // Revisions are open in it.
    reached: 'clash',
    may: LEADS,
    seenBy: 'project',
  },
  {
    name: 'getProject',
    run: (a, s) => data.getProject(a, s.team.projectId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'project',
  },
  {
    name: 'getFileRoom',
    run: (a, s) => data.getFileRoom(a, s.team.projectId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'project',
  },
  {
    name: 'createInvitation',
    run: (a, s) =>
      data.createInvitation(a, {
        projectId: s.team.projectId,
        role: 'fabricator',
        companyName: s.teamCompanyName,
      }),
    reached: 'invalid',
    may: LEADS,
    seenBy: 'project',
  },
  {
    name: 'revokeInvitation',
    run: (a, s) => data.revokeInvitation(a, { invitationId: s.usedInvitationId }),
    reached: 'clash',
    may: LEADS,
    seenBy: 'project',
  },
  {
    name: 'listProjectAccess',
    run: (a, s) => data.listProjectAccess(a, s.team.projectId),
    reached: 'ok',
    may: LEADS,
    seenBy: 'project',
  },
  {
    name: 'getProjectAccessFile',
    run: (a, s) => data.getProjectAccessFile(a, s.team.projectId),
    reached: 'ok',
    may: LEADS,
    seenBy: 'project',
  },
  {
    name: 'getProjectSignOffPolicy',
    run: (a, s) => data.getProjectSignOffPolicy(a, s.team.projectId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'project',
  },
  {
    name: 'setSignOffPolicy',
    run: (a, s) =>
      data.setSignOffPolicy(a, {
        projectId: s.team.projectId,
        seenVersion: UNSEEN,
        waiverBlocking: 'no-author',
        waiverMajor: 'no-author',
        waiverMinor: 'second-person',
        review: 'no-author',
        authorSigns: 'no',
        authorReleases: 'no',
        differences: 'acknowledged',
        requiredSignatures: 1,
        requiredCapacities: [],
        reason: 'because',
      }),
    reached: 'stale',
    may: LEADS,
    seenBy: 'project',
  },
  {
    name: 'getCapacities',
    run: (a, s) => data.getCapacities(a, s.team.projectId),
    reached: 'ok',
    may: [...READERS, 'admin'],
    seenBy: 'project',
  },
  {
    name: 'listCapacityProjects',
    run: (a) => data.listCapacityProjects(a),
    reached: 'ok',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'grantCapacity',
    run: (a, s) =>
      data.grantCapacity(a, {
        projectId: s.team.projectId,
        userId: s.team.outsider.userId,
        capacity: 'Chief Medical Officer',
        statement: 'answers for the patients',
      }),
    reached: 'invalid',
    may: [...LEADS, 'admin'],
    seenBy: 'project',
  },
  {
    name: 'withdrawCapacity',
    run: (a, s) => data.withdrawCapacity(a, { grantId: s.withdrawnGrantId, reason: 'because' }),
    reached: 'clash',
    may: [...LEADS, 'admin'],
    seenBy: 'project',
  },
  {
    name: 'joinByInvitation',
    run: (a) => data.joinByInvitation(a, { token: 'A'.repeat(43) }),
    reached: 'ok',
    may: [],
    seenBy: 'nothing',
  },
  {
    name: 'setMembershipRole',
    run: (a, s) =>
      data.setMembershipRole(a, {
        projectId: s.team.projectId,
        userId: s.team.fabricator.userId,
        role: 'member',
      }),
    reached: 'invalid',
    may: LEADS,
    seenBy: 'project',
  },
  {
    name: 'removeMember',
    run: async (a, s) =>
      data.removeMember(a, { projectId: s.team.projectId, userId: await addThrowawayMember(s.team) }),
    reached: 'ok',
    may: LEADS,
    seenBy: 'project',
  },
  {
    name: 'listFabricators',
    run: (a, s) => data.listFabricators(a, s.team.projectId),
    reached: 'ok',
    may: READERS,
    seenBy: 'project',
  },
]
