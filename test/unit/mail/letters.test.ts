import { describe, expect, it } from 'vitest'
import { composeMail, findMentions, findTypedMention, MAIL_KIND_LABELS, MAIL_KINDS, type MailNotice } from '@/lib/mail'

const place = { projectName: 'Skua', revisionLabel: 'B', href: 'http://localhost:3000/projects/1/revisions/2' }

const query: MailNotice = {
  kind: 'query',
  place,
  threadKind: 'engineering-query',
  title: 'Foil of L2',
  anchor: 'L2',
  by: 'Bram Tolley',
  text: 'Rolled or deposited?',
  wanted: { act: 'answer it', until: { date: '2027-02-26', event: 'the layout is frozen' } },
}

describe('a message', () => {
  it('says the same as text and as HTML', () => {
    const { subject, text, html } = composeMail(query)
    expect(subject).toBe('Skua B: Bram Tolley asks: Foil of L2')
    for (const form of [text, html]) {
      expect(form).toContain('Rolled or deposited?')
      expect(form).toContain(place.href)
      expect(form).toContain('account page')
    }
    expect(text).toContain('Bram Tolley opened the engineering query "Foil of L2", on L2, in Skua B.')
  })

  it('says what is wanted from the reader, and until when', () => {
    const { text, html } = composeMail(query)
    for (const form of [text, html]) {
      expect(form).toContain('Please answer it by 2027-02-26, when the layout is frozen.')
    }
    const undated = composeMail({ ...query, wanted: { act: 'answer it', until: null } })
    expect(undated.text).toContain('Please answer it. The brief states no date.')
    expect(composeMail({ ...query, wanted: null }).text).not.toContain('Wanted')
  })

  it('about a release bears the hash of the package, where there is one for the reader', () => {
    const released = { kind: 'released' as const, place, by: 'Imke Dahl', packageSha256: 'a'.repeat(64) }
    const { subject, text } = composeMail(released)
    expect(subject).toBe('Skua B: released')
    expect(text).toContain(`SHA-256 of your package: ${'a'.repeat(64)}`)
    expect(text).toContain(`Download the package:\n${place.href}`)
    expect(composeMail({ ...released, packageSha256: null }).text).not.toMatch(/SHA-256|package/)
  })

  it('about a declaration says whose it is, and which', () => {
    const said = { kind: 'declaration' as const, place, companyName: 'Brackenfold Circuits', by: 'Bram Tolley' }
    const not = composeMail({
      ...said,
      verdict: 'not-buildable',
      conditions: [],
      note: 'The web is too narrow.',
      wanted: null,
    })
    expect(not.subject).toBe('Skua B: Brackenfold Circuits declares it not buildable')
    expect(not.text).toContain('> The web is too narrow.')
    const can = composeMail({ ...said, verdict: 'buildable', conditions: [], note: '', wanted: null })
    expect(can.subject).toBe('Skua B: Brackenfold Circuits declares it buildable')
    const only = ['Only at 8 mm.', 'Only with our coverlay.']
    const under = composeMail({ ...said, verdict: 'with-conditions', conditions: only, note: '', wanted: null })
    expect(under.subject).toBe('Skua B: Brackenfold Circuits declares it buildable with conditions')
    for (const condition of only) expect(under.text).toContain(condition)
  })

  it('about a proposal says what would change, in part where it is much, and asks only who decides', () => {
    const made = {
      kind: 'proposal' as const,
      place: { ...place, href: `${place.href}/proposals/3` },
      event: 'made' as const,
      title: 'Wider bend',
      by: 'Bram Tolley',
      changes: Array.from({ length: 10 }, (_, index) => `input ${index}: 1 mm to 2 mm`),
      text: 'No smaller tool.',
      mayDecide: true,
      wanted: { act: 'accept or decline it', until: null },
    }
    const { subject, text } = composeMail(made)
    expect(subject).toBe('Skua B: Bram Tolley proposes a change "Wider bend"')
    expect(text).toContain('It would change: input 0: 1 mm to 2 mm; input 1')
    expect(text).toContain('; and 2 more.')
    expect(text).toContain('Accept or decline it:\nhttp://localhost:3000/projects/1/revisions/2/proposals/3')
    const declined = composeMail({
      ...made,
      event: 'declined',
      title: null,
      changes: [],
      mayDecide: false,
      wanted: null,
    })
    expect(declined.text).toContain('Bram Tolley declined the proposed change, in Skua B.')
    expect(declined.text).not.toMatch(/Accept or decline|would change/)
  })

  it('never lets what somebody typed become markup', () => {
    const text = '<img src=x onerror="alert(1)"> & <b>'
    const { html } = composeMail({ ...query, text, title: '<script>', by: '"><a href=x>' })
    expect(html).not.toMatch(/<img|<script|<b>|<a href=x/)
    expect(html).toContain('&lt;img src=x onerror=&quot;alert(1)&quot;&gt; &amp; &lt;b&gt;')
  })

  it('keeps a subject to one line, so that nobody adds a header of their own (RFC 5322, 2.2)', () => {
    const title = 'Foil\r\nBcc: all@example.org\u2028Reply-To: x'
    const { subject } = composeMail({ ...query, title })
    expect(subject).not.toMatch(/[\r\n\u2028]/)
    expect([...composeMail({ ...query, title: 'x'.repeat(500) }).subject].length).toBeLessThanOrEqual(150)
  })

  it('says nothing in place of a name that the reader must not be told', () => {
    const { subject, text } = composeMail({
      ...query,
      title: null,
      anchor: null,
      text: null,
      place: { ...place, projectName: null },
    })
    expect(subject).toBe('a revision that is shared with you: Bram Tolley asks')
    expect(text).toContain('Bram Tolley opened the engineering query, in a revision that is shared with you.')
    expect(text).not.toContain('null')
  })

  it('has a label for every kind', () => {
    expect(Object.keys(MAIL_KIND_LABELS).toSorted()).toEqual([...MAIL_KINDS].toSorted())
  })
})

describe('a mention', () => {
  const people = [
    { id: '1', name: 'Imke Dahl' },
    { id: '2', name: 'Imke Dahlgren' },
    { id: '3', name: 'Jorun Vey' },
    { id: '4', name: 'Jorun Vey' },
  ]
  const idsIn = (text: string) => findMentions(text, people).map(({ id }) => id)

  it('is an @ before a whole name, in any letter case, the longer of two names', () => {
    expect(idsIn('@Imke Dahl, see this')).toEqual(['1'])
    expect(idsIn('(@imke dahlgren) and @Imke Dahl.')).toEqual(['2', '1'])
    expect(idsIn('@Imke Dahl @Imke Dahl')).toEqual(['1'])
  })

  it('means both of two people of one name', () => {
    expect(idsIn('@Jorun Vey')).toEqual(['3', '4'])
  })

  it('is no part of an address, of a longer word or of half a name', () => {
    expect(idsIn('imke@Imke Dahl')).toEqual([])
    expect(idsIn('@Imke Dahls')).toEqual([])
    expect(idsIn('@Imke')).toEqual([])
    expect(idsIn('Imke Dahl')).toEqual([])
  })

  it('is noticed while it is typed, up to the caret', () => {
    expect(findTypedMention('ask @Im', 7)).toEqual({ start: 4, typed: 'Im' })
    expect(findTypedMention('ask @', 5)).toEqual({ start: 4, typed: '' })
    expect(findTypedMention('ask @Im', 3)).toBeNull()
    expect(findTypedMention('a@example', 9)).toBeNull()
  })
})
