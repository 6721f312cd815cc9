import type { Rules } from './actions'
import { COMPANY_ROLES } from './rights'
import { ofCompany } from './who'

/** Rules of fabricators, which belong to their own people. */
export const COMPANIES_RULES = {
  'company:view': { subject: 'company', mayNot: null, rule: ofCompany({ own: COMPANY_ROLES, team: () => true }) },
  'company:view-inside': {
    subject: 'company',
    mayNot: "see this company's people and projects",
    rule: ofCompany({ own: COMPANY_ROLES }),
  },
  'company:view-access': {
    subject: 'company',
    mayNot: 'see who opened what of this company',
    rule: ofCompany({ own: ['administrator'] }),
  },
  'company:view-matrix': {
    subject: 'company',
    mayNot: "see this fabricator's matrix and limits",
    rule: ofCompany({ own: COMPANY_ROLES, team: ({ matrix }) => matrix === 'shown' }),
  },
  'company:view-shelf': {
    subject: 'company',
    mayNot: "see this fabricator's shelf",
    rule: ofCompany({ own: COMPANY_ROLES, team: ({ shelf }) => shelf === 'shown' }),
  },
  'company:view-rates': {
    subject: 'company',
    mayNot: "see this fabricator's rates and panel formats",
    rule: ofCompany({ own: COMPANY_ROLES, team: ({ rates }) => rates === 'shown' }),
  },
  // What is shown is the version in force: what was stated before, or withdrawn, stays with the company.
  'company:view-versions': {
    subject: 'company',
    mayNot: "open earlier versions of this fabricator's sheets",
    rule: ofCompany({ own: COMPANY_ROLES }),
  },
  // Somebody has to name the first administrator; each admission is in the trail.
  'company:admit': {
    subject: 'company',
    mayNot: 'admit people to this company',
    rule: ofCompany({ own: ['administrator'], admin: true }),
  },
  'company:take-part': {
    subject: 'company',
    mayNot: 'decide in which projects this company takes part',
    rule: ofCompany({ own: ['administrator'] }),
  },
  'company:share': {
    subject: 'company',
    mayNot: 'choose what this company shows',
    rule: ofCompany({ own: ['administrator'] }),
  },
  // What a fabricator can build, holds and charges is for those of its people to say who have that right.
  'limits:edit-fabricator': {
    subject: 'company',
    mayNot: "change this fabricator's limits",
    rule: ofCompany({ own: ['administrator', 'sheet-writer'] }),
  },
  'sheet:edit': {
    subject: 'company',
    mayNot: "change this fabricator's sheets",
    rule: ofCompany({ own: ['administrator', 'sheet-writer'] }),
  },
} satisfies Partial<Rules>
