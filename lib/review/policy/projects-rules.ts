import type { Rules } from './actions'
import { hasRole, inProject, isOwnCompanyIn, readsProject } from './who'

/** Rules of projects, their people and their policy. */
export const PROJECTS_RULES = {
  'project:view': {
    subject: 'project',
    mayNot: null,
    rule: (rights, { projectId }) =>
      readsProject(rights, { projectId }) ||
      rights.memberships.some((own) => own.projectId === projectId && isOwnCompanyIn(rights, projectId, own.companyId)),
  },
  'project:view-access': { subject: 'project', mayNot: 'see who opened what of this project', rule: inProject('lead') },
  'project:edit': { subject: 'project', mayNot: 'change this project', rule: inProject('lead') },
  'project:invite': { subject: 'project', mayNot: 'invite people to this project', rule: inProject('lead') },
  'project:remove-person': { subject: 'project', mayNot: 'change who is in this project', rule: inProject('lead') },
  'policy:edit': { subject: 'project', mayNot: 'change the sign-off policy', rule: inProject('lead') },
  // An admin as well: where a project has one lead, somebody else must say in what capacity the lead signs.
  'capacity:grant': {
    subject: 'project',
    mayNot: 'grant capacities in this project',
    rule: (rights, { projectId }) => rights.isAdmin || hasRole(rights, projectId, ['lead']),
  },
  'revision:create': {
    subject: 'project',
    mayNot: 'create a revision in this project',
    rule: inProject('lead', 'member'),
  },
} satisfies Partial<Rules>
