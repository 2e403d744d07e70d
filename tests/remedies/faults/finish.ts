/** Running a search to its end, where nobody needs to stop it. */
export function finish<Result>(search: Generator<unknown, Result>): Result {
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}
