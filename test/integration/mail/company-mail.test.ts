import { beforeAll, beforeEach, expect, it } from 'vitest'
import {
  type Actor,
  confirmCompany,
  createInvitation,
  createProject,
  decideParticipation,
  setMailChoices,
} from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { OPTIONAL_MAIL_KINDS } from '@/lib/mail'
import { expectDone } from '@/test/factories/act-results'
import { getActorOf, makeCompany, makeTeam, makeUser, type Team } from '@/test/factories/people'
import { describeOnBothDatabases } from '@/test/setup/databases'

describeOnBothDatabases('messages to a company that a project asks', () => {
  let team: Team
  let brackenfold: string

  const nameOf = async (companyId: string) => (await db().company.findUniqueOrThrow({ where: { id: companyId } })).name
  /** A project of the outsider's, at which nobody of any fabricator is. */
  const makeOwnProject = async (name: string) =>
    (await expectDone(createProject(team.outsider, { name, description: '' }))).projectId
  const ask = (projectId: string, companyName: string, email?: string) =>
    expectDone(
      createInvitation(team.outsider, {
        projectId,
        role: 'fabricator',
        companyName,
        ...(email === undefined ? {} : { email }),
      }),
    )
  const listMail = () => db().mailMessage.findMany({ orderBy: [{ createdAt: 'asc' }, { address: 'asc' }] })
  const addressesOf = (mails: readonly { address: string }[]) => mails.map(({ address }) => address).toSorted()
  const addUser = async (name: string, role: string, companyId: string): Promise<Actor> => {
    const userId = await makeUser(name)
    await db().companyPerson.create({ data: { companyId, userId, role } })
    return getActorOf(userId)
  }

  beforeAll(async () => {
    team = await makeTeam()
    brackenfold = await nameOf(team.companies.brackenfold)
  }, 120_000)
  beforeEach(async () => {
    await db().mailMessage.deleteMany()
  })

  it('go to its administrators alone, with what is wanted, the page where they answer, and whom to ask', async () => {
    const second = await addUser('Ada Rill', 'administrator', team.companies.brackenfold)
    await addUser('Mem Ber', 'member', team.companies.brackenfold)
    const gone = await addUser('Gone Away', 'administrator', team.companies.brackenfold)
    await db().user.update({ where: { id: gone.userId }, data: { disabledAt: new Date() } })
    const name = `Redshank ${Date.now()}`
    const projectId = await makeOwnProject(name)
    await ask(projectId, brackenfold, 'somebody@example.org')
    const mails = await listMail()
    expect(addressesOf(mails)).toEqual([team.fabricator.email, second.email].toSorted())
    for (const mail of mails) {
      expect(mail).toMatchObject({ kind: 'company-asked', replyToAddress: team.outsider.email })
      expect(mail.subject).toBe(`${name} asks ${brackenfold} to take part`)
      expect(mail.bodyText).toContain(`asks ${brackenfold} to take part in the project ${name}.`)
      expect(mail.bodyText).toContain('They would like to work with somebody@example.org.')
      expect(mail.bodyText).toContain('Please decide whether')
      expect(mail.bodyText).toMatch(new RegExp(`https?://\\S+/companies/${team.companies.brackenfold}\\b`))
    }
  })

  it('say once a day that it is asked, however often it is, and then what else is wanted', async () => {
    const projectId = await makeOwnProject(`Dotterel ${Date.now()}`)
    for (let count = 0; count < 3; count += 1) await ask(projectId, brackenfold, `number.${count}@example.org`)
    expect((await listMail()).filter(({ recipientId }) => recipientId === team.fabricator.userId)).toHaveLength(1)
    const part = { companyId: team.companies.brackenfold, projectId }
    const { version } = await db().participation.findUniqueOrThrow({ where: { companyId_projectId: part } })
    await expectDone(
      decideParticipation(team.fabricator, { ...part, decision: 'take-part', seenVersion: version, reason: '' }),
    )
    await db().mailMessage.deleteMany()
    await ask(projectId, brackenfold, 'one.more@example.org')
    const [mail] = await listMail()
    expect(mail?.bodyText).toContain('Please bring one.more@example.org, or somebody else from')
  })

  it('can be switched off, and name no other fabricator', async () => {
    await expectDone(
      setMailChoices(team.fabricator, { kinds: OPTIONAL_MAIL_KINDS.filter((kind) => kind !== 'company-asked') }),
    )
    const ostrel = await nameOf(team.companies.ostrel)
    await ask(await makeOwnProject(`With ${ostrel} ${Date.now()}`), brackenfold)
    const mails = await listMail()
    expect(mails.map(({ recipientId }) => recipientId)).not.toContain(team.fabricator.userId)
    expect(mails.length).toBeGreaterThan(0)
    for (const { subject, bodyText, bodyHtml } of mails) expect(subject + bodyText + bodyHtml).not.toContain(ostrel)
    await expectDone(setMailChoices(team.fabricator, { kinds: [...OPTIONAL_MAIL_KINDS] }))
  })

  it('go to the admins of the workspace where nobody of it could answer', async () => {
    const lone = await nameOf(await makeCompany('fabricator', 'Sanderling Flex'))
    await ask(await makeOwnProject(`Stint ${Date.now()}`), lone)
    const mails = await listMail()
    expect(addressesOf(mails)).toContain(team.admin.email)
    expect(addressesOf(mails)).not.toContain(team.fabricator.email)
    expect(mails[0]?.bodyText).toContain(`Please name an administrator of ${lone}.`)
    expect(mails[0]?.bodyText).toContain('/workspace/companies')
  })

  it('go to the known company that a typed name turns out to be', async () => {
    const projectId = await makeOwnProject(`Whimbrel ${Date.now()}`)
    await ask(projectId, `Bracken Fold ${Date.now()}`)
    const typed = await db().company.findFirstOrThrow({ where: { projectId } })
    await db().mailMessage.deleteMany()
    const companyId = typed.id
    await expectDone(confirmCompany(team.admin, { companyId, knownCompanyId: team.companies.brackenfold }))
    const mails = await listMail()
    expect(addressesOf(mails)).toContain(team.fabricator.email)
    expect(mails[0]?.bodyText).toContain(`, an admin of the workspace, asks ${brackenfold} to take part`)
  })
})
