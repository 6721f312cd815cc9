import type { Rules } from './actions'
import { isAdmin, isOnSomeTeam } from './who'

/** Rules of the workspace and of one's own account. */
export const WORKSPACE_RULES = {
  'workspace:view': { subject: 'workspace', mayNot: 'see the workspace', rule: isAdmin },
  'settings:edit': { subject: 'workspace', mayNot: 'change the settings of the workspace', rule: isAdmin },
  'limits:edit-workspace': { subject: 'workspace', mayNot: 'change the limits of the workspace', rule: isAdmin },
  'catalogue:edit': { subject: 'workspace', mayNot: 'change the catalogue of the workspace', rule: isAdmin },
  'account:manage': { subject: 'workspace', mayNot: 'manage accounts', rule: isAdmin },
  'backup:make': { subject: 'workspace', mayNot: 'make a backup', rule: isAdmin },
  'signing-key:rotate': { subject: 'workspace', mayNot: 'change the signing key', rule: isAdmin },
  'trail:check': { subject: 'workspace', mayNot: 'check the whole trail', rule: isAdmin },
  'mail:view': { subject: 'workspace', mayNot: null, rule: isAdmin },
  // A first project is an admin's to create; afterwards everybody on a team may, and becomes its lead.
  'project:create': {
    subject: 'workspace',
    mayNot: 'create a project',
    rule: (rights) => rights.isAdmin || isOnSomeTeam(rights, ['lead', 'member', 'quality']),
  },
  // Materials and starting constructions of the workspace's own belong to all its teams, and to no fabricator.
  'library:view': {
    subject: 'workspace',
    mayNot: "see the workspace's materials and starting constructions",
    rule: (rights) => rights.isAdmin || isOnSomeTeam(rights, ['lead', 'member', 'quality']),
  },
  'library:edit': {
    subject: 'workspace',
    mayNot: "change the workspace's materials and starting constructions",
    rule: (rights) => rights.isAdmin || isOnSomeTeam(rights, ['lead', 'member']),
  },
  'account:edit-own': {
    subject: 'account',
    mayNot: null,
    rule: (rights, subject) => rights.userId === subject.userId,
  },
  // Admits nobody by itself: it says which company a typed name stands for.
  'company:confirm': { subject: 'workspace', mayNot: 'say which company a name stands for', rule: isAdmin },
} satisfies Partial<Rules>
