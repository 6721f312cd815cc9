import 'server-only'

export { now, replaceClock } from './clock'
export {
  type DatabaseKind,
  getSettings,
  type LogLevel,
  type OidcSettings,
  parseSettings,
  type SettingProblem,
  type Settings,
  SettingsError,
  withoutPassword,
} from './environment'
export { formatLogLine, type LogFields, log } from './log'
export { isLoopbackHost, isLoopbackOnly } from './loopback'
export { ensureSecrets, getSecrets, type Secrets } from './secrets'
export { dropSetupCode, ensureSetupCode, readSetupCode } from './setup-code'
export { writeWhole } from './write-whole'
