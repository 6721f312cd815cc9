/** Flex tests of a workspace's or a fabricator's own: what was entered, what it gives, and where it holds. */
export { type FlexTestCondition, type FlexTestSet, fitFlexTestSets, listTestedLives } from './fit-sets'
export { findFlexTestIssues, findFlexTestRowIssues, flexTestRowKey } from './problems'
export {
  FLEX_TEST_KINDS,
  FLEX_TEST_MOTIONS,
  FLEX_TEST_RESULTS,
  type FlexTestRow,
  flexTestRowSchema,
  MAX_FLEX_TEST_ROWS,
} from './row'
export type { TestedConstant, TestedLife } from './tested-life'
