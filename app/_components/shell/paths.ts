export { paths, type RevisionTab } from '@/lib/addresses'
