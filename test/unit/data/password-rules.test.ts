import { describe, expect, it } from 'vitest'
import { findPasswordFault } from '@/lib/data/records/password-rules'
import { signIns } from '@/seed/sign-ins'

const PERSON = { name: 'Halka Brannoch', email: 'halka.brannoch@quillmoor.example' }

describe('a new password', () => {
  it.each([
    ['password1234', /common/],
    ['Password1234!!', /common/],
    ['passwordpassword', /common/],
    ['abcabcabcabcabc', /common/],
    ['letmein-letmein', /common/],
    ['aaaaaaaaaaaaaaab', /few/],
    ['abcdefghijklmnop', /sequence/],
    ['zyxwvutsrqponmlk', /sequence/],
    ['qwertyuiopasdf', /common|sequence/],
    ['1qaz2wsx3edc4rfv', /common|sequence/],
    ['halka.brannoch@quillmoor.example', /own name/],
    ['Halka-Brannoch-2027', /own name/],
    ['brannoch.halka', /own name/],
    ['Bendworthy2027!', /own name|common/],
  ])('is refused: %s', (password, reason) => {
    expect(findPasswordFault(password, PERSON)).toMatch(reason)
  })

  it.each([
    'plover-sandpiper-42',
    'spring-tide-at-noon',
    'sanderling-at-dawn',
    'a halka poem about the sea',
    'Ξ-ünïcödé-rêvíew',
    ...new Set(signIns.map(({ password }) => password)),
  ])('is taken: %s', (password) => {
    expect(findPasswordFault(password, PERSON)).toBeNull()
  })
})
