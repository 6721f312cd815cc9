/** Integration tests that replace a module or set what is read once: each has a process of its own. A unit test refuses a file that should be here. */
export const OWN_PROCESS = [
  'test/integration/access/provider.test.ts',
  'test/integration/access/session-cookie.test.ts',
  'test/integration/data/confirmation.test.ts',
  'test/integration/data/file-quota.test.ts',
  'test/integration/data/first-admin.test.ts',
  'test/integration/data/identities.test.ts',
  'test/integration/data/passkeys.test.ts',
  'test/integration/data/uploads.test.ts',
]
