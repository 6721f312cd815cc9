/** An ordinary form: what is looked for lives in the address, so it can be kept, sent on and gone back to. */
export function SearchForm({ text }: { text: string }) {
  return (
    <search>
      <form className="row row-end no-print" action="/" method="get">
        <div className="field">
          <label className="field-label" htmlFor="find">
            Find in projects, comments and items
          </label>
          <input id="find" name="find" type="search" className="input" defaultValue={text} maxLength={100} />
        </div>
        <button type="submit" className="button">
          Find
        </button>
      </form>
    </search>
  )
}
