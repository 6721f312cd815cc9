// Stands in for the `server-only` package, which throws when it is loaded outside a server bundle.
export {}
