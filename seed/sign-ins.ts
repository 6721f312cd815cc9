/** Somebody of the demo scenario who can sign in. Every name is invented. */
export interface DemoSignIn {
  readonly name: string
  readonly email: string
  readonly password: string
  /** What to try as this person, for the list that starting prints. */
  readonly role: string
}

/**
 * Everybody's password in the demonstration. Known to anyone who reads this file, so the server accepts it only while other
 * machines cannot reach it.
 */
export const DEMO_PASSWORD = 'plover-estuary-2mm'

function makeSignIn(name: string, company: 'quillmoor' | 'brackenfold' | 'ostrel', role: string): DemoSignIn {
  const email = `${name.toLowerCase().replaceAll(' ', '.')}@${company}.example`
  return { name, email, password: DEMO_PASSWORD, role }
}

export const CAST = {
  designer: makeSignIn('Ines Vantongeren', 'quillmoor', 'circuit designer, member of Skua and Pipit'),
  mechanical: makeSignIn('Tomas Ebbersund', 'quillmoor', 'mechanical designer, member of Skua and Pipit'),
  lead: makeSignIn('Halka Brannoch', 'quillmoor', 'lead engineer of Skua and Pipit'),
  quality: makeSignIn(
    'Dewi Marrable',
    'quillmoor',
    'quality engineer of Skua and Pipit: reviews, approves waivers, signs',
  ),
  observer: makeSignIn('Perrin Ashgrove', 'quillmoor', 'purchasing, observer of Skua and Pipit'),
  auditor: makeSignIn('Torben Halewick', 'quillmoor', 'auditor of Skua and Pipit: reads everything, changes nothing'),
  admin: makeSignIn('Rosalind Kettleby', 'quillmoor', 'admin of the workspace, in no project'),
  brackenfold: makeSignIn(
    'Oskar Thornvale',
    'brackenfold',
    'fabricator, administrator of Brackenfold Circuits, in Skua',
  ),
  ostrel: makeSignIn('Linnea Quarrie', 'ostrel', 'fabricator, administrator of Ostrel Flexible, in Skua and Pipit'),
} as const satisfies Record<string, DemoSignIn>

/** Worked on Skua for a while; the account is disabled, so it is not printed. */
export const CONTRACTOR: DemoSignIn = makeSignIn('Corvin Hasp', 'quillmoor', 'contractor')

/** In the order in which they are printed. */
export const signIns: readonly DemoSignIn[] = Object.values(CAST)
