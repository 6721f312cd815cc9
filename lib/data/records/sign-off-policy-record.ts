import 'server-only'
import { readStoredJson } from '@/lib/engine'
import { type PinnedSignOffPolicy, pinnedSignOffPolicySchema, USUAL_SIGN_OFF_POLICY } from '@/lib/review'
import type { WorkspaceSettings } from './settings-record'

interface ProjectRow {
  readonly signOffPolicyJson: string
  readonly signOffPolicyVersion: number
}

/** A project's own policy; where it has made no choice, the usual one with the signatures that the workspace begins with. */
export function readProjectPolicy(
  { signOffPolicyJson, signOffPolicyVersion }: ProjectRow,
  { requiredSignatures, signingCapacities }: WorkspaceSettings,
): PinnedSignOffPolicy {
  const own = readPinnedPolicy(signOffPolicyJson)
  if (own !== null) return { ...own, version: signOffPolicyVersion }
  const requiredCapacities = signingCapacities.map(({ name }) => name).sort()
  return { version: signOffPolicyVersion, rules: { ...USUAL_SIGN_OFF_POLICY, requiredSignatures, requiredCapacities } }
}

/** What a revision goes by; null where it began before there were policies. */
export function readPinnedPolicy(policyJson: string): PinnedSignOffPolicy | null {
  return policyJson === '' ? null : readStoredJson('a sign-off policy', pinnedSignOffPolicySchema, policyJson)
}

export function writePolicy({ version, rules }: PinnedSignOffPolicy): string {
  return JSON.stringify({ version, rules })
}
