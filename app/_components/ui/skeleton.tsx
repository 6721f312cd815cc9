/** Lines of what is on its way, so that the page keeps its place. Assistive tools hear of it where the act says so. */
export function Skeleton() {
  return (
    <div className="skeleton" aria-hidden="true">
      <span />
      <span />
      <span />
    </div>
  )
}
