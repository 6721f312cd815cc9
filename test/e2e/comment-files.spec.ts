import { randomUUID } from 'node:crypto'
import type { Locator } from '@playwright/test'
import { CAST } from '@/seed/sign-ins'
import { expect, test } from './fixtures'

/** A PNG of one pixel. */
const PIXEL = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=='

/** As the browser does it where somebody pastes or drops files on a field. */
async function bring(
  field: Locator,
  how: 'paste' | 'drop',
  files: readonly { name: string; type: string; base64: string }[],
  texts: Readonly<Record<string, string>> = {},
) {
  await field.evaluate(
    (element, { how: kind, files: brought, texts: written }) => {
      const data = new DataTransfer()
      for (const [type, text] of Object.entries(written)) data.setData(type, text)
      for (const { name, type, base64 } of brought) {
        const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0))
        data.items.add(new File([bytes], name, { type }))
      }
      const event =
        kind === 'paste'
          ? new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true })
          : new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true })
      element.dispatchEvent(event)
    },
    { how, files, texts },
  )
}

test('pictures are pasted, dropped and chosen while a comment is written, and one that is refused is named and kept', async ({
  openAs,
  backstage,
  consoleWatch,
}) => {
  // The empty file.
  consoleWatch.expect(/status of 400/)
  const by = CAST.designer.email
  const name = `Pictures ${randomUUID().slice(0, 8)}`
  const projectId = await backstage.act('makeProject', { name, lead: CAST.lead.email, team: { [by]: 'member' } })
  const revisionId = await backstage.act('makeRevision', { projectId, by, label: 'A', design: 'skua-rev-b' })
  const page = await openAs('designer')
  await page.goto(`/projects/${projectId}/revisions/${revisionId}/threads`)
  const form = page.locator('form').filter({ has: page.getByRole('button', { name: 'Open the thread' }) })
  await form.getByLabel('Subject').fill('Crack beside the stiffener')
  const text = form.getByLabel('Text', { exact: true })
  await text.fill('See the picture.')
  const picture = { name: 'image.png', type: 'image/png', base64: PIXEL }
  await bring(text, 'paste', [picture, picture])
  const chosen = form.getByRole('list', { name: 'Files for this comment' })
  await expect(chosen.getByRole('listitem')).toHaveCount(2)
  await chosen.getByRole('button', { name: 'Remove picture-2.png' }).click()
  // Cells of a spreadsheet come with a picture of themselves: they are text.
  await bring(text, 'paste', [picture], {
    'text/plain': '12\t25',
    'text/html': '<table><tr><td>12</td><td>25</td></tr></table>',
  })
  await expect(chosen.getByRole('listitem')).toHaveCount(1)
  await form.getByRole('button', { name: 'Open the thread' }).click()
  const thread = page.getByRole('article', { name: 'Crack beside the stiffener' })
  await expect(thread.getByRole('link', { name: 'picture-1.png' })).toBeVisible()
  await expect(thread.getByRole('link', { name: 'picture-2.png' })).toHaveCount(0)

  // An empty file is refused: the reply stands, the file is named with the reason, and the one after it is still there.
  const reply = thread.locator('form').filter({ has: page.getByRole('button', { name: 'Reply', exact: true }) })
  await reply.getByLabel('Reply').fill('And from the other side.')
  await bring(reply.getByLabel('Reply'), 'drop', [
    { name: 'nothing.txt', type: 'text/plain', base64: '' },
    { name: 'side.png', type: 'image/png', base64: PIXEL },
  ])
  await reply.getByRole('button', { name: 'Reply', exact: true }).click()
  await expect(reply.getByRole('alert')).toContainText('The comment is stored; a file is not. nothing.txt:')
  await expect(thread.getByText('And from the other side.')).toBeVisible()
  await reply.getByRole('button', { name: 'Remove nothing.txt' }).click()
  await reply.getByRole('button', { name: 'Send the files again' }).click()
  await expect(thread.getByRole('link', { name: 'side.png' })).toBeVisible()
  await expect(reply.getByRole('listitem')).toHaveCount(0)
  await expect(reply.getByRole('alert')).toHaveCount(0)
})

test('a term of the trade explains itself where the checklist uses it, and the glossary lists it', async ({
  openAs,
  demo,
}) => {
  const page = await openAs('designer')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaA}/checklist#item-neutral-axis`)
  const body = page.locator('#item-body-neutral-axis')
  await body
    .getByRole('button', { name: /^neutral axis$/i })
    .first()
    .click()
  const note = page.getByRole('dialog', { name: 'What “neutral axis” means' })
  await expect(note).toContainText('neither longer nor shorter')
  await note.getByRole('link', { name: 'Glossary' }).click()
  await expect(page).toHaveURL(/\/glossary#neutral-axis$/)
  await expect(
    page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: 'neutral axis' }) }),
  ).toContainText('Strain grows with the distance from it')
})
