import type { ActRefusal, ActResult, AskedCompany, CreatedInvitation, SecondStep, SignedIn } from '@/lib/data'

/** The value of a write; a refusal fails the test and says why. */
export async function expectDone<T>(acting: Promise<ActResult<T>>): Promise<T> {
  const settled = await acting
  if (settled.ok) return settled.value
  throw new Error(`refused: ${JSON.stringify(settled.refusal)}`)
}

/** The refusal of a write; a success fails the test. */
export async function expectRefused(acting: Promise<ActResult<unknown>>): Promise<ActRefusal> {
  const settled = await acting
  if (!settled.ok) return settled.refusal
  throw new Error(`was carried out: ${JSON.stringify(settled.value)}`)
}

/** The link of an invitation; a company that was asked instead fails the test. */
export async function expectInvited(
  acting: Promise<ActResult<CreatedInvitation | AskedCompany>>,
): Promise<CreatedInvitation> {
  const made = await expectDone(acting)
  if (!made.isAsked) return made
  throw new Error(`${made.company.name} was asked instead`)
}

/** A sign-in that asks for no second step. */
export async function expectSignedIn(signingIn: Promise<ActResult<SignedIn | SecondStep>>): Promise<SignedIn> {
  const value = await expectDone(signingIn)
  if ('secondStep' in value) throw new Error('a second step was asked for')
  return value
}
